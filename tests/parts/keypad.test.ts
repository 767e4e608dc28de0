import { expect, it } from 'vitest';
import { keyOf } from '../../app/parts/keypad.tsx';

it('takes a real keyboard as the pad: comma as point, minus as change of sign', () => {
  expect([...'0123456789'].map(keyOf)).toEqual([...'0123456789']);
  expect(['.', ',', '°', '-', '−', 'Backspace', 'Enter'].map(keyOf)).toEqual(['.', '.', '.', '±', '±', '⌫', 'next']);
});

it('leaves every other key alone', () => {
  expect(['a', 'F5', 'Tab', 'Escape', ' ', '10', 'ArrowLeft'].map(keyOf)).toEqual(Array(7).fill(undefined));
});
