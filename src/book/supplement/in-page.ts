/** What runs inside the browser's page, as text: it sees nothing of this file. Each is called on a book laid out in its page boxes. */

export interface Reading {
  /** Path of a picture → digest of its bytes: a picture that only moved is no change. */
  readonly pictures: Readonly<Record<string, string>>;
}

/** What stands on each page: digests of blocks and rows without page numbers, and the anchors whose page numbers are printed. */
export function readPages({ pictures }: Reading): { readonly parts: readonly string[]; readonly refs: readonly string[] }[] {
  const digest = (element: Element): string => {
    const copy = element.cloneNode(true) as Element;
    for (const one of [copy, ...Array.from(copy.querySelectorAll('*'))]) {
      one.removeAttribute('data-block');
      if (one.matches('a.pg')) one.textContent = '';
      const src = one.getAttribute('src');
      if (src !== null) one.setAttribute('src', pictures[src] ?? src);
    }
    // Two 53-bit hashes of the markup side by side: a page that changed and still has the same is not to be expected in any book.
    const text = copy.outerHTML;
    let [h1, h2, h3, h4] = [0xdeadbeef, 0x41c6ce57, 0x9e3779b9, 0x85ebca6b];
    for (let at = 0; at < text.length; at++) {
      const code = text.charCodeAt(at);
      h1 = Math.imul(h1 ^ code, 2654435761);
      h2 = Math.imul(h2 ^ code, 1597334677);
      h3 = Math.imul(h3 ^ code, 2246822507);
      h4 = Math.imul(h4 ^ code, 3266489909);
    }
    return [h1, h2, h3, h4].map((part, at) => ((part ^ ((at % 2 === 0 ? h2 : h1) >>> 15)) >>> 0).toString(36)).join('');
  };
  return Array.from(document.querySelectorAll<HTMLElement>('.leaf')).map((leaf) => {
    const parts: string[] = [];
    for (const block of Array.from(leaf.children)) {
      const rows = block.matches('table') ? Array.from(block.querySelectorAll(':scope > tbody > tr')) : [];
      for (const one of rows.length > 0 ? rows : [block]) {
        const found = digest(one);
        one.setAttribute('data-digest', found);
        parts.push(found);
      }
    }
    const refs = Array.from(leaf.querySelectorAll('a.pg')).map((link) => (link.getAttribute('href') as string).slice(1));
    return { parts, refs: [...new Set(refs)] };
  });
}

export interface Wanted {
  /** Numbers of the pages, from 1. */
  readonly numbers: readonly number[];
  /** Digests of the earlier book: what is not among them gets a bar in the margin. */
  readonly known: readonly string[];
  /** Anchor → label of its page. */
  readonly labels: Readonly<Record<string, string>>;
}

/** Markup of some pages as they are to be printed: bars beside what is new, page numbers as they are among the pages that stay. */
export function takePages({ numbers, known, labels }: Wanted): readonly { readonly html: string; readonly sheet: string }[] {
  const old = new Set(known);
  return numbers.map((number) => {
    const leaf = document.querySelector<HTMLElement>(`.leaf[data-page="${number}"]`) as HTMLElement;
    for (const part of Array.from(leaf.querySelectorAll('[data-digest]'))) {
      if (!old.has(part.getAttribute('data-digest') as string)) part.classList.add('amended');
      part.removeAttribute('data-digest');
    }
    for (const link of Array.from(leaf.querySelectorAll('a.pg'))) {
      const plain = document.createElement('span');
      plain.className = 'page-label';
      plain.textContent = labels[(link.getAttribute('href') as string).slice(1)] ?? '';
      link.replaceWith(plain);
    }
    for (const one of Array.from(leaf.querySelectorAll('[data-block]'))) one.removeAttribute('data-block');
    return { html: leaf.innerHTML, sheet: leaf.classList.contains('landscape') ? 'landscape' : 'portrait' };
  });
}
