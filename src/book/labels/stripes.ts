const WIDE = 8;
const HIGH = 60;
const STEP = 6;

/** A strip of slanted bars where something can hurt badly, a plain edge where not: read without colour. */
export function stripes(grave: boolean): string {
  const open = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDE} ${HIGH}" preserveAspectRatio="xMidYMin slice" aria-hidden="true">`;
  if (!grave) return `${open}<path d="M6 0v${HIGH}" stroke="#000" stroke-width="0.5"/></svg>`;
  let bars = '';
  for (let y = -WIDE; y < HIGH; y += STEP * 2) bars += `M0 ${y + WIDE}L${WIDE} ${y}v${STEP}L0 ${y + WIDE + STEP}z`;
  return `${open}<path d="${bars}" fill="#000"/></svg>`;
}
