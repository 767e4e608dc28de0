import { rmSync } from 'node:fs';

/**
 * Removes a browser's profile. Children of a browser that was killed may still be writing into it: what cannot be
 * removed after some tries is left in the folder for temporary files, and is no failure of what was tested.
 */
export function removeProfile(path: string): void {
  try {
    rmSync(path, { recursive: true, force: true, maxRetries: 8, retryDelay: 250 });
  } catch (error) {
    console.log(`left behind: ${(error as Error).message}`);
  }
}
