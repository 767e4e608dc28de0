/** A text handed to the phone as a file of its own. */

/** `marl-estate.json`: a name that every phone takes. */
export const fileName = (label: string, ending: string): string => {
  const name = label
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return `${name || 'car'}.${ending}`;
};

export function saveFile(text: string, name: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  Object.assign(document.createElement('a'), { href: url, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
