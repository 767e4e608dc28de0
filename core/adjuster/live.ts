import type { Adjuster } from '../contract.ts';
import { adjusterKinds } from './catalogue.ts';

/** Whether it can be turned while the rack is watched. */
export const isLive = ({ kind, live }: Adjuster): boolean => adjusterKinds[kind]?.live === true && live !== false;
