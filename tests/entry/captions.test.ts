import { describe, expect, it } from 'vitest';
import { captionFrom } from '../../src/entry/captions.js';

describe('a caption from a picture’s own name', () => {
  it.each([
    ['trough_before-closing.HEIC', 'trough before closing'],
    ['left wall, bay 6 (2).jpg', 'left wall, bay 6'],
    ['IMG_0412.jpg', undefined],
    ['20260401_101010.jpg', undefined],
    ['Screenshot 2026-04-01 copy.png', undefined],
    ['3F2504E0-4F89-41D3-9A0C-0305E82C3301.jpg', undefined],
    ['weld.jpg', undefined],
  ])('%j says %j', (name, caption) => {
    expect(captionFrom(name)).toBe(caption);
  });
});
