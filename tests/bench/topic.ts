/** A part of the benchmark: tasks that one run measures side by side, and the rows that it prints of them. */
import type { Bench } from 'tinybench';

/** Median of a task, ms. */
export type Median = (task: string) => number;

export interface Row {
  readonly what: string;
  readonly value: string;
  readonly target?: string;
}

export interface Topic {
  readonly title: string;
  /** Checks the answers first: a wrong one throws. */
  readonly add: (bench: Bench) => void;
  readonly rows: (median: Median) => readonly Row[];
}

export function print(title: string, rows: readonly Row[]): void {
  console.log(`\n${title}`);
  for (const { what, value, target = '' } of rows) {
    console.log(`  ${what.padEnd(74)}${value.padStart(10)}   ${target}`.trimEnd());
  }
}

export const ms = (time: number): string => `${time.toFixed(1)} ms`;
