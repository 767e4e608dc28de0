/** What can be kept beside the database; see beside.ts. */
export interface Beside {
  /** Each is there whole or not at all. */
  keep(name: string, content: Blob): Promise<void>;
  read(name: string): Promise<Blob | undefined>;
  /** All that is kept, in order. */
  names(): Promise<readonly string[]>;
  forget(name: string): Promise<void>;
  close(): void;
}
