/** As much of a page as Preact needs to draw text into it: no elements, no events. */
export class TinyPage {
  readonly nodeType = 1;
  readonly childNodes: TinyText[] = [];
  readonly ownerDocument = { createTextNode: (data: string) => new TinyText(data) };

  get firstChild(): TinyText | null {
    return this.childNodes[0] ?? null;
  }

  insertBefore(text: TinyText, before: TinyText | null): TinyText {
    text.remove();
    const at = before ? this.childNodes.indexOf(before) : this.childNodes.length;
    this.childNodes.splice(at, 0, text);
    text.parentNode = this;
    return text;
  }

  /** What a person would read. */
  get text(): string {
    return this.childNodes.map(({ data }) => data).join('');
  }

  /** This page, as what Preact asks for. */
  get element(): Element {
    return this as unknown as Element;
  }
}

class TinyText {
  readonly nodeType = 3;
  parentNode: TinyPage | null = null;

  constructor(public data: string) {}

  get nextSibling(): TinyText | null {
    const all = this.parentNode?.childNodes ?? [];
    return all[all.indexOf(this) + 1] ?? null;
  }

  remove(): void {
    const all = this.parentNode?.childNodes;
    all?.splice(all.indexOf(this), 1);
    this.parentNode = null;
  }
}
