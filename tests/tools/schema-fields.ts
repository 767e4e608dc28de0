/** The fields that a valibot schema asks for, as paths from where it stands, and the names that its choices may have. */

/** As much of a schema as it takes to walk down into it. */
interface Node {
  readonly type?: string;
  readonly entries?: Readonly<Record<string, Node>>;
  readonly item?: Node;
  readonly items?: readonly Node[];
  readonly wrapped?: Node;
  readonly pipe?: readonly Node[];
  readonly options?: readonly unknown[];
  readonly message?: unknown;
}

export interface Leaf {
  /** `front.camber.low`, list places as `[]`. */
  readonly field: string;
  /** What the schema says where it is refused. */
  readonly messages: readonly string[];
}

/** Each field that can be refused on its own, with what is said of it. */
export function leavesOf(schema: unknown, at = ''): Leaf[] {
  const node = schema as Node;
  if (node.wrapped) return leavesOf(node.wrapped, at);
  const chain = (node.pipe ?? []).filter((part) => part !== node);
  const holder = chain.find((part) => 'entries' in part || 'item' in part) ?? node;
  if (holder !== node && (holder.entries || holder.item)) return leavesOf(holder, at);
  if (node.item) return leavesOf(node.item, `${at}[]`);
  if (node.entries) {
    return Object.entries(node.entries).flatMap(([name, entry]) => leavesOf(entry, at ? `${at}.${name}` : name));
  }
  if (node.type === 'unknown' || !at) return [];
  const messages = [node, ...chain].flatMap(({ message }) => (typeof message === 'string' ? [message] : []));
  return [{ field: at, messages: [...new Set(messages)] }];
}

export const fieldsIn = (schema: unknown): string[] => leavesOf(schema).map(({ field }) => field);

/** Every name of a field and of a choice that stands in a schema. */
export function namesIn(schema: unknown): string[] {
  const node = schema as Node;
  const below = [
    node.wrapped,
    node.item,
    ...(node.items ?? []),
    ...(node.pipe ?? []),
    ...Object.values(node.entries ?? {}),
  ];
  const own = [...Object.keys(node.entries ?? {}), ...(node.options ?? []).filter((one) => typeof one === 'string')];
  return [...own, ...below.filter((one) => one && one !== node).flatMap(namesIn)];
}
