/** The search’s open list. */
import { describe, expect, it } from 'vitest';
import { Heap } from '../../../../core/plan/search/heap.ts';
import { stream } from '../../../tools/random-cars.ts';

describe('the heap', () => {
  it('gives the least first, whatever came between', () => {
    const random = stream(7);
    const heap = new Heap<number>((a, b) => a < b);
    const inside: number[] = [];
    for (let i = 0; i < 2000; i++) {
      if (random() < 0.55) {
        const item = Math.floor(50 * random());
        heap.push(item);
        inside.push(item);
      } else {
        inside.sort((a, b) => a - b);
        expect(heap.pop()).toBe(inside.shift());
      }
    }
    for (const item of inside.sort((a, b) => a - b)) expect(heap.pop()).toBe(item);
    expect(heap.pop()).toBeUndefined();
  });

  it('compares with no more than two on each level', () => {
    let compared = 0;
    const heap = new Heap<number>((a, b) => {
      compared++;
      return a < b;
    });
    const random = stream(8);
    const count = 1000;
    for (let i = 0; i < count; i++) heap.push(random());
    for (let i = 0; i < count; i++) heap.pop();
    expect(compared).toBeLessThan(3 * count * Math.ceil(Math.log2(count)));
  });
});
