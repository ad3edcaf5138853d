import { describe, expect, it } from 'vitest';
import { markArtifacts } from '../../src/pdf/artifacts.js';

const BAND = { headPt: 740, footPt: 50 };
const marked = (...lines: readonly string[]): readonly string[] | undefined =>
  markArtifacts(Buffer.from(lines.join('\n')), BAND)
    ?.toString('latin1')
    .split('\n');

/** As the browser writes a page: turned over, 0.75 points to a pixel. */
const TURNED = ['.75 0 0 -.75 0 792 cm', 'q'];

describe('ornament of a page', () => {
  it('is marked: running head and foot by their kind, rules plainly; tagged words stay as they are (ISO 32000-1, 14.8.2.2)', () => {
    expect(
      marked(
        ...TURNED,
        ...['BT', '1 0 0 -1 70 40 Tm', '<0001> Tj', 'ET', 'BT', '1 0 0 -1 70 1010 Tm', '<0002> Tj', 'ET'],
        'Q',
        ...['/P <</MCID 0 >>BDC', 'BT', '<0003> Tj', 'ET', 'EMC', '70 200 100 1 re', 'f'],
      ),
    ).toEqual([
      ...TURNED,
      ...['/Artifact <</Type /Pagination /Subtype /Header>> BDC', 'BT', '1 0 0 -1 70 40 Tm', '<0001> Tj', 'ET', 'EMC'],
      ...['/Artifact <</Type /Pagination /Subtype /Footer>> BDC', 'BT', '1 0 0 -1 70 1010 Tm', '<0002> Tj', 'ET', 'EMC'],
      'Q',
      ...['/P <</MCID 0 >>BDC', 'BT', '<0003> Tj', 'ET', 'EMC'],
      ...['/Artifact BMC', '70 200 100 1 re', 'f', 'EMC', ''],
    ]);
  });

  it('begins before a path and not within it, and is no path that only clips', () => {
    expect(marked('0 200 10 10 re', 'W n', '1 200 m', '5 205 l', 'S')).toEqual([
      ...['0 200 10 10 re', 'W n'],
      ...['/Artifact BMC', '1 200 m', '5 205 l', 'S', 'EMC', ''],
    ]);
  });

  it('never crosses a saved state', () => {
    expect(marked('0 200 1 1 re', 'f', 'q', '0 200 1 1 re', 'f', 'Q')).toEqual([
      ...['/Artifact BMC', '0 200 1 1 re', 'f', 'EMC', 'q'],
      ...['/Artifact BMC', '0 200 1 1 re', 'f', 'EMC', 'Q'],
    ]);
  });

  it('is not guessed at in what no browser writes', () => {
    expect(marked('BT', '/P <</MCID 0 >>BDC', 'ET')).toBeUndefined();
    expect(marked('EMC')).toBeUndefined();
    expect(marked('/P <</MCID 0 >>BDC')).toBeUndefined();
    expect(marked('BI', 'ID', 'EI')).toBeUndefined();
  });
});
