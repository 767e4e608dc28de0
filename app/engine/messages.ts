/** What the page and the worker say to each other, and how an error is made fit to cross. */
import { InputError } from '../../core/input-error.ts';
import type { Rule } from '../../core/rule.ts';

/** Page → worker. */
export interface Call {
  readonly id: number;
  readonly name: string;
  readonly args: readonly unknown[];
}

/** Worker → page: first `ready`, then one answer a call. */
export type Answer =
  | { readonly ready: true }
  | { readonly id: number; readonly result: unknown }
  | { readonly id: number; readonly error: WireError };

/** An error as plain data: a class does not survive the crossing, its fields do. */
export interface WireError {
  readonly name: string;
  readonly message: string;
  readonly field?: string;
  readonly value?: unknown;
  readonly rule?: Rule;
}

export function toWire(error: unknown): WireError {
  if (error instanceof InputError) {
    const { name, message, field, rule } = error;
    return { name, message, field, rule, value: portable(error.value) };
  }
  if (error instanceof Error) return { name: error.name, message: error.message };
  return { name: 'Error', message: String(error) };
}

/** The value itself where it can cross, else its text. */
function portable(value: unknown): unknown {
  try {
    return structuredClone(value);
  } catch {
    return String(value);
  }
}
