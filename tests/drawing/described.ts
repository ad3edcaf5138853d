/** A drawing in words, line by line, for comparing with the one of before: what stands where, to a tenth of a millimetre. */

const attribute = (tag: string, name: string): string => new RegExp(` ${name}="([^"]*)"`, 'u').exec(tag)?.[1] ?? '';

const tenth = (value: number): string => {
  const rounded = Math.round(value * 10) / 10;
  return (rounded === 0 ? 0 : rounded).toFixed(1);
};

const numbers = (text: string): readonly number[] => [...text.matchAll(/-?\d+(?:\.\d+)?/gu)].map(([one]) => Number(one));

/** The box around a shape's points, as `x0 y0 … x1 y1`. */
function around(points: readonly number[]): string {
  const xs = points.filter((_, i) => i % 2 === 0);
  const ys = points.filter((_, i) => i % 2 === 1);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].map(tenth).join(' ');
}

/**
 * Size and title; then, by layer, each label with its place, and how many marks of each kind lie in which box. Lines of the drawing
 * itself are counted and not listed, so that the description stays short enough to be read.
 */
export function described(svg: string): string {
  const lines = [`${attribute(svg, 'viewBox')} ${/<title>(.*?)<\/title>/su.exec(svg)?.[1] ?? ''}`];
  for (const layer of svg.split(/<g class="sb-/u).slice(1)) {
    const name = /^[a-z-]+/u.exec(layer)?.[0] ?? '';
    const shapes = [...layer.matchAll(/<(?:path|polyline|polygon|line) [^>]*>/gu)].map(([tag]) => tag);
    const points = shapes.flatMap((tag) => numbers(attribute(tag, 'd') || attribute(tag, 'points')));
    lines.push(`${name}:${shapes.length > 0 && points.length > 1 ? ` ${shapes.length} shapes in ${around(points)}` : ''}`);
    for (const [, tag = '', inner = ''] of layer.matchAll(/<text([^>]*)>(.*?)<\/text>/gsu)) {
      const at = attribute(tag, 'transform') || `${tenth(Number(attribute(tag, 'x')))} ${tenth(Number(attribute(tag, 'y')))}`;
      lines.push(`  ${at} ${attribute(tag, 'text-anchor') || 'start'} ${inner.replaceAll(/<[^>]*>/gu, '')}`);
    }
  }
  return `${lines.join('\n')}\n`;
}
