/** Values of the preferences that are known, by their ids; one that a later version has added may be anything. */
import * as v from 'valibot';
import { choice, number, textUpTo, whole } from '../adjuster/fields.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import { open } from '../check/object.ts';
import { drawer, fields, gauge, list } from '../check/schema.ts';
import { WHEEL_ANGLES } from '../contract.ts';
import { BENCH, DECIMALS_OF, RACK_ORDERS, THEMES, TOE_REFERENCES, UNIT_CHOICES } from './preferences.ts';

const yesOrNo = v.boolean(ruleText({ is: 'yes-or-no' }));

/** Of the preferences that this version has, by id. */
export const KNOWN: ReadonlyMap<string, v.GenericSchema> = new Map<string, v.GenericSchema>([
  [
    'units',
    open({
      angle: v.optional(choice(UNIT_CHOICES.angle)),
      toe: v.optional(choice(UNIT_CHOICES.toe)),
      toeParts: v.optional(choice(UNIT_CHOICES.toeParts)),
      length: v.optional(choice(UNIT_CHOICES.length)),
      thrust: v.optional(choice(UNIT_CHOICES.thrust)),
      decimal: v.optional(choice(UNIT_CHOICES.decimal)),
      distance: v.optional(choice(UNIT_CHOICES.distance)),
      sai: v.optional(yesOrNo),
      heights: v.optional(yesOrNo),
    }),
  ],
  [
    'rack',
    open({
      order: v.optional(choice(RACK_ORDERS)),
      ...Object.fromEntries(DECIMALS_OF.map((of) => [of, v.optional(whole(1, 3))])),
    }),
  ],
  ['gauge', gauge],
  [
    'bench',
    open(
      Object.fromEntries(
        Object.entries(BENCH).map(([name, { most, unit }]) => [name, v.optional(number(0, most, unit))]),
      ),
    ),
  ],
  ['drawer', open({ counted: v.optional(yesOrNo), shims: v.optional(drawer) })],
  ['theme', choice(THEMES)],
  ['live', list(choice(WHEEL_ANGLES), WHEEL_ANGLES.length)],
  ['shop', open({ name: v.optional(textUpTo(120)) })],
  ['technician', textUpTo(120)],
  ['toe-reference', choice(TOE_REFERENCES)],
  ['total-toe', yesOrNo],
  ['backup', open({ at: fields.time })],
]);

/** The schema of a preference's value; of a car's own, such as `total-toe:CAR`, by what stands before the colon. */
export const preferenceValue = (id: string): v.GenericSchema => KNOWN.get(id.split(':', 1)[0] ?? id) ?? v.unknown();
