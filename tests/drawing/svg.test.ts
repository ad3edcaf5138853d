import { describe, expect, it } from 'vitest';
import { line, type Scene, textMark } from '../../src/drawing/scene.js';
import { escapeXml, mm, toSvg } from '../../src/drawing/svg.js';
import { anchor } from '../../src/model/anchor.js';

const scene = (words: string, id?: string): Scene => ({
  widthMm: 100,
  heightMm: 50,
  title: words,
  alt: words,
  marks: [
    line(
      'runs',
      'run-dc',
      [
        [1, 2],
        [30.123456, 2],
      ],
      id,
    ),
    textMark('labels', 'id', [10, 10], words, id === undefined ? {} : { id }),
  ],
});

const NASTY = `</text><script>alert("x")</script> & 'y' \u0000\u0008 \ud800 ]]>`;

describe('a scene as SVG', () => {
  it('lets no text of a record become markup', () => {
    const svg = toSvg(scene(NASTY, NASTY), { linkable: () => true });
    expect(svg).not.toContain('<script');
    expect(svg).toContain('&lt;script&gt;');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: XML 1.0 allows none of them
    expect(svg).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/u);
    expect([...svg.matchAll(/href="([^"]*)"/gu)].map((m) => m[1])).toEqual([`#${anchor(NASTY)}`, `#${anchor(NASTY)}`]);
  });

  it('replaces what XML cannot hold (XML 1.0, production 2)', () => {
    expect(escapeXml('a\u0000b\ud800c\ufffed\ttab 🚐')).toBe('a\ufffdb\ufffdc\ufffdd\ttab 🚐');
  });

  it('links only records that have a home', () => {
    expect(toSvg(scene('A', 'DC-12/S1'), { linkable: () => true })).toContain('<a href="#r-DC-12.2fS1">');
    expect(toSvg(scene('A', 'DC-12/S1'), { linkable: () => false })).not.toContain('<a ');
  });

  it('prints at most two decimals and no minus zero', () => {
    expect([mm(30.123456), mm(2), mm(-0.001), mm(1 / 3)]).toEqual(['30.12', '2', '0', '0.33']);
  });

  it('is sized in millimetres and says what it shows', () => {
    const svg = toSvg(scene('Plan'), { linkable: () => true });
    expect(svg).toContain('width="100mm" height="50mm" viewBox="0 0 100 50"');
    expect(svg).toContain('role="img"');
    expect(svg).toContain('aria-label="Plan"');
    expect(svg).toContain('<title>Plan</title>');
  });
});
