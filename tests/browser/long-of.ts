/** Tests of `npm run test:long` alone: beside each is said what guards the same in `npm test`. */
import type { TestType } from '@playwright/test';
import { shortOrLong } from '../tools/seeds.ts';

type Declare<T extends object, W extends object> = (title: string, body: Parameters<TestType<T, W>>[2]) => void;

/** The same kind of test, run in `npm run test:long` alone; itself, so that what fails is found where it stands. */
export const longOf = <T extends object, W extends object>(test: TestType<T, W>): Declare<T, W> =>
  shortOrLong<Declare<T, W>>(() => undefined, test);
