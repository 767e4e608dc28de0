import { usualPath } from './adjuster-fields.ts';
import type { Form } from './form.ts';

/** What says how far an adjuster moves what it moves. */
const OWN_FIGURES = ['eccentricity', 'lead'];

/** A form in which an adjuster's figures are usual ones no more, once how far it moves what it moves is typed. */
export const lookedAt = (form: Form, path: string): Form => ({
  ...form,
  put: (change) =>
    form.put(OWN_FIGURES.some((name) => `${path}.${name}` in change) ? { ...change, [usualPath(path)]: '' } : change),
});
