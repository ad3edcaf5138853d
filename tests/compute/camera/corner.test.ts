import { describe, expect, it } from 'vitest';
import { cornerNear } from '../../../src/compute/camera/corner.js';

/** A bright quarter on dark ground, its corner at (39.5, 29.5), with soft sides as a lens gives. */
function quarter(): { width: number; height: number; levels: Uint8Array } {
  const [width, height] = [80, 60];
  const soft = (d: number): number => Math.min(1, Math.max(0, 0.5 + d / 2));
  const levels = Uint8Array.from(
    { length: width * height },
    (_, i) => 40 + 160 * soft((i % width) - 39.5) * soft(Math.floor(i / width) - 29.5),
  );
  return { width, height, levels };
}

describe('the nearest corner', () => {
  it('is found from beside it to within half a pixel', () => {
    const found = cornerNear(quarter(), 46, 25, 10);
    expect(found).toBeDefined();
    expect(Math.hypot((found?.[0] ?? 0) - 39.5, (found?.[1] ?? 0) - 29.5)).toBeLessThan(0.5);
  });

  it('is none on an even ground, on a straight edge, or too far away', () => {
    expect(cornerNear(quarter(), 15, 15, 8)).toBeUndefined();
    expect(cornerNear(quarter(), 70, 30, 8)).toBeUndefined();
    expect(cornerNear(quarter(), 60, 45, 8)).toBeUndefined();
  });
});
