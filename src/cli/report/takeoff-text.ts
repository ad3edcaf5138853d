import type { Assessment } from '../../assess.js';
import { type Overall, overall } from '../../compute/access/overall.js';
import type { MassSum, TakeOff } from '../../compute/takeoff/types.js';
import { lengthUp, lineMass, mass, positionWords, type UnitSystem } from '../../quantity/format.js';
import type { TerminalPaint } from './paint.js';
import { type ShownUnits, shownIn } from './shown.js';
import { type TextColumn, textTable } from './tables.js';
import { bullets, counted, paragraph } from './wrap.js';

export function takeoffText({ model, figures }: Assessment, paint: TerminalPaint, each: boolean): string {
  const { takeOff } = figures;
  const { units } = model.shop;
  const { total } = takeOff;
  const head = paint.strong(`${model.shell.id}  ${model.shell.title}: take-off`);
  if (total.count === 0) return `${head}\n\nNothing with mass is recorded yet.`;
  const parts = [
    head,
    paragraph(
      `${mass(total.massKg, units)} in ${counted(total.count, 'item')}, center of gravity at ${positionWords(total.centroid, units)} (x rearward of the front axle, y right, z above the rail).`,
    ),
  ];
  const whole = overall(model);
  if (whole) parts.push(paragraph(overallText(whole, units)));
  const shown = shownIn(units);
  parts.push(...sectionTables(takeOff, shown, paint));
  parts.push(sums('By alloy', takeOff.byAlloy, shown, paint));
  parts.push(sums('By stage', takeOff.byStage, shown, paint));
  parts.push(sums('By side', takeOff.bySide, shown, paint));
  if (each) parts.push(...eachText(takeOff, shown, paint));
  if (takeOff.assumptions.length > 0) parts.push(`${paint.strong('Assumed')}\n${bullets(takeOff.assumptions)}`);
  return parts.filter((part) => part !== '').join('\n\n');
}

/** Over everything on record, rounded up: who drives under a bridge wants the larger figure. */
function overallText({ lengthMm, widthMm, heightAboveGroundMm, setBy }: Overall, units: UnitSystem): string {
  const height =
    heightAboveGroundMm === undefined
      ? 'height above the ground not known (`rail_top_above_ground`)'
      : `${lengthUp(heightAboveGroundMm, units)} high above the ground (${setBy.height})`;
  return `Overall: ${lengthUp(lengthMm, units)} long (${setBy.length.join(' to ')}), ${lengthUp(widthMm, units)} wide (${setBy.width.join(' to ')}), ${height}. Only what is recorded counts.`;
}

const right = (head: string): TextColumn => ({ head, align: 'right' });

function sectionTables(takeOff: TakeOff, shown: ShownUnits, paint: TerminalPaint): readonly string[] {
  const rows = Object.entries(takeOff.bySection).map(([id, sum]) => {
    const properties = takeOff.sections.find((section) => section.id === id);
    const perMetre = Object.values(properties?.kgPerM ?? {})[0];
    return [
      id,
      String(sum.count),
      shown.long(sum.lengthMm),
      shown.mass(sum.massKg, 1),
      perMetre === undefined ? '-' : lineMass(perMetre, shown.massUnit === 'lb' ? 'us' : 'metric'),
    ];
  });
  if (rows.length === 0) return [];
  const columns = [
    { head: 'section', wrap: true },
    right('pieces'),
    right(`length ${shown.longUnit}`),
    right(`mass ${shown.massUnit}`),
    right('per length'),
  ];
  return [`${paint.strong('By section')}\n${textTable(columns, rows, '  ')}`];
}

function sums(title: string, by: Readonly<Record<string, MassSum>>, shown: ShownUnits, paint: TerminalPaint): string {
  const rows = Object.entries(by)
    .filter(([, sum]) => sum.count > 0)
    .map(([name, sum]) => [
      name === '' ? '(none)' : name,
      String(sum.count),
      shown.mass(sum.massKg, 1),
      ...sum.centroid.map((along) => shown.length(along)),
    ]);
  if (rows.length === 0) return '';
  const columns = [
    { head: title.replace('By ', ''), wrap: true },
    right('items'),
    right(`mass ${shown.massUnit}`),
    ...['x', 'y', 'z'].map((axis) => right(`${axis} ${shown.lengthUnit}`)),
  ];
  return `${paint.strong(title)}\n${textTable(columns, rows, '  ')}`;
}

function eachText(takeOff: TakeOff, shown: ShownUnits, paint: TerminalPaint): readonly string[] {
  const members = takeOff.members.map((one) => [
    one.id,
    one.section ?? 'plate',
    one.alloy,
    shown.length(one.lengthMm),
    shown.mass(one.massKg, 2),
  ]);
  const panels = takeOff.panels.map((one) => [one.id, one.alloy ?? '-', shown.area(one.areaMm2), shown.mass(one.massKg, 2)]);
  const memberHeads = [
    { head: 'member' },
    { head: 'section', wrap: true },
    { head: 'alloy' },
    right(`length ${shown.lengthUnit}`),
    right(`mass ${shown.massUnit}`),
  ];
  const panelHeads = [{ head: 'panel' }, { head: 'alloy' }, right(`area ${shown.areaUnit}`), right(`mass ${shown.massUnit}`)];
  return [
    members.length > 0 ? `${paint.strong('Members')}\n${textTable(memberHeads, members, '  ')}` : '',
    panels.length > 0 ? `${paint.strong('Panels')}\n${textTable(panelHeads, panels, '  ')}` : '',
  ];
}
