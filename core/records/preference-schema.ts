/** Values of the preferences that are known, by their ids; one that a later version has added may be anything. */
import * as v from 'valibot';
import { choice } from '../adjuster/fields.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import { open } from '../check/object.ts';
import { drawer, fields, gauge } from '../check/schema.ts';
import { THEMES, TOE_REFERENCES, UNIT_CHOICES } from './preferences.ts';

const yesOrNo = v.boolean(ruleText({ is: 'yes-or-no' }));

const KNOWN: ReadonlyMap<string, v.GenericSchema> = new Map<string, v.GenericSchema>([
  [
    'units',
    open({
      angle: v.optional(choice(UNIT_CHOICES.angle)),
      toe: v.optional(choice(UNIT_CHOICES.toe)),
      length: v.optional(choice(UNIT_CHOICES.length)),
      thrust: v.optional(choice(UNIT_CHOICES.thrust)),
      decimal: v.optional(choice(UNIT_CHOICES.decimal)),
      sai: v.optional(yesOrNo),
    }),
  ],
  ['gauge', gauge],
  ['drawer', open({ counted: v.optional(yesOrNo), shims: v.optional(drawer) })],
  ['theme', choice(THEMES)],
  ['toe-reference', choice(TOE_REFERENCES)],
  ['total-toe', yesOrNo],
  ['backup', open({ at: fields.time })],
]);

/** The schema of a preference's value; of a car's own, such as `total-toe:CAR`, by what stands before the colon. */
export const preferenceValue = (id: string): v.GenericSchema => KNOWN.get(id.split(':', 1)[0] ?? id) ?? v.unknown();
