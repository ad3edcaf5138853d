import { beforeAll, describe, expect, it } from 'vitest';
import { handOverDocument } from '../../src/book/handover/document.js';
import { heatLimits, underFloor } from '../../src/query/release/index.js';
import { FINGERPRINT, HISTORY, smallAssessment } from './small-store.js';

const LINING = `
- {id: IP-1, kind: interior, name: lining <left>, thickness: 3 mm, facing: right, fixing: {method: bonded, adhesive: two-part structural},
   outline: [[100 in, -44 in, 10 in], [160 in, -44 in, 10 in], [160 in, -44 in, 70 in], [100 in, -44 in, 70 in]]}
`;

let html = '';
let titles: readonly string[] = [];
beforeAll(async () => {
  const assessment = smallAssessment({ 'shells/T-1/panels-lining.yaml': LINING });
  const open = [
    {
      findings: assessment.findings
        .slice(0, 1)
        .map((one) => ({ ...one, severity: 'warning' as const, message: 'Weld <W-1> is open' })),
    },
  ];
  const document = await handOverDocument(
    { assessment, fingerprint: FINGERPRINT, history: HISTORY, photoFile: async () => undefined },
    { state: 'in build, next to sign off: walls', open },
  );
  html = document.html;
  titles = document.chapters.map(({ title }) => title);
});

describe('the hand-over sheet', () => {
  it('has one page a subject, what to keep in mind first', () => {
    expect(titles.slice(0, 3)).toEqual(['Hand-over to paint and interior', 'Weight that is left', 'Screws: left wall, inside']);
    expect(titles.filter((one) => one.startsWith('Mask: ')).length).toBeGreaterThan(0);
    expect(titles.slice(-2)).toEqual(['Paint, and how warm it may be baked', 'Open items by zone']);
    expect(html).toContain('State: in build, next to sign off: walls.');
    expect(html.match(/Weigh again when your work is done/gu)).toHaveLength(1);
  });
  it('draws where one may screw, and where each thing is that is masked', () => {
    const section = (key: string): string => html.slice(html.indexOf(`data-chapter="${key}"`)).split('</section>')[0] ?? '';
    expect(section('handover-screws-0')).toContain('<svg');
    expect(section('handover-screws-0')).toContain('IP-1');
    expect(section('handover-mask-0')).toContain('<svg');
    expect(section('handover-weight')).toMatch(/steer[\s\S]*drive/u);
  });
  it('has a page for a floor of which no sheet is recorded: nothing proved, and what is nearest under it', () => {
    const of = (sill: string, runZ: string) =>
      underFloor(
        smallAssessment({
          'shells/T-1/services/air.yaml': `
service: Air
medium: air
circuits: [{id: AI, name: air, size: 1/2 in}]
nodes:
  - {id: A1, kind: source, at: [100 in, 0 in, ${runZ}], tolerance: 10 mm}
  - {id: A2, kind: load, at: [120 in, 0 in, ${runZ}], tolerance: 10 mm}
runs: [{id: AI/1, circuit: AI, from: A1, to: A2, tolerance: 10 mm}]
`,
          'shells/T-1/openings.yaml': `- {id: DR, kind: door, wall: right, sill: [[100 in, 49 in, ${sill}], [130 in, 49 in, ${sill}]], width: 30 in, height: 70 in}`,
        }).model,
      )?.find(({ id }) => id === 'AI/1');
    // 10 in down to 8 in is 50.8 mm, less 10 mm of tolerance.
    expect(of('10 in', '8 in')?.depthMm).toBeCloseTo(40.8, 6);
    expect(of('10 in', '3 in')).toBeUndefined();
  });
  it('keeps who ordered the coach and who welded to the shop, and takes names for text', () => {
    for (const secret of ['Ysolde', 'Brackwater', 'Orla', 'Vantongeren']) expect(html).not.toContain(secret);
    expect(html).toContain('Weld &lt;W-1&gt; is open');
    expect(html).not.toContain('<left>');
  });
  it('says what on record bounds baking, and that nothing on record allows it', () => {
    expect(html).toContain('The record has no baking limit of its own');
    const { wires, adhesives } = heatLimits(smallAssessment({ 'shells/T-1/panels-lining.yaml': LINING }).model);
    expect(wires.flatMap(({ circuits }) => circuits)).toContain('DC-12');
    expect(adhesives).toContainEqual({ name: 'two-part structural', panels: ['IP-1'] });
  });
});
