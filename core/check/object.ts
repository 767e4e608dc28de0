/** valibot takes a list for an object with no fields; these do not. */
import * as v from 'valibot';

const noList = (message: string) => v.check((value: unknown) => !Array.isArray(value), message);

/** An object with these fields and no others. The message says what is allowed. */
export const object = <T extends v.ObjectEntries>(entries: T, message = 'an object, { … }') =>
  v.pipe(v.unknown(), noList(message), v.strictObject(entries, message));

/** An object with these fields and perhaps others. */
export const open = <T extends v.ObjectEntries>(entries: T, message = 'an object, { … }') =>
  v.pipe(v.unknown(), noList(message), v.looseObject(entries, message));

/** An object of values by name. */
export const byName = <T extends v.GenericSchema>(
  value: T,
  message = 'an object, { … }',
  name: v.GenericSchema<string, string> = v.string(),
) => v.pipe(v.unknown(), noList(message), v.record(name, value, message));
