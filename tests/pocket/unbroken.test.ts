import { expect, it } from 'vitest';
import { unbroken } from '../../src/pocket/unbroken.js';

it.each([
  ['<p>by entry door DR-1, 4 ft 3/4 in up</p>', '<p>by entry door <i>DR-1</i>, 4\u00a0ft\u00a0<i>3/4</i>\u00a0in up</p>'],
  ['<small>pull DC-12/S1 (13-3/4 in)</small>', '<small>pull <i>DC-12/S1</i> (<i>13-3/4</i>\u00a0in)</small>'],
  ['<dd>2026-04-23, 50 V</dd>', '<dd><i>2026-04-23</i>, 50\u00a0V</dd>'],
])('keeps ids, fractions, dates and quantities on one line: %s', (markup, whole) => expect(unbroken(markup)).toBe(whole));

it.each(['<a href="#r-DC-12">DC-12</a>', '<p>low-smoke, and/or, &#x27;A&#x27;</p>', '<svg viewBox="0 0 3-4"/>'])(
  'leaves a link of its own, other words and tags alone: %s',
  (markup) => expect(unbroken(markup)).toBe(markup),
);
