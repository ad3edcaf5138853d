import type { HoldPointGap, HoldPointProgress, StageProgress } from '../../closeout/stage-progress.js';
import type { WouldMeet } from '../../closeout/would-meet.js';
import type { TerminalPaint } from './paint.js';
import type { ShownProgress } from './progress-json.js';
import { counted, paragraph } from './wrap.js';

/** More of the same are counted, not listed. */
const LISTED = 4;
/** So many steps are enough for a day. */
const STEPS = 12;

/** Stages in build order, what each hold point has and lacks; then who is next and what can be done today. */
export function progressText(shown: ShownProgress, paint: TerminalPaint, all: boolean): string {
  const parts = shown.for === undefined ? shown.stages.map((stage) => stageText(stage, shown, paint, all)) : [];
  return [...parts, todayText(shown, paint, all), countsText(shown)].join('\n\n');
}

function stageText(stage: StageProgress, { next }: ShownProgress, paint: TerminalPaint, all: boolean): string {
  const here = next?.stage === stage.stage;
  const lines = [
    `${paint.strong(`${stage.stage}  ${stage.name}`)}${here ? paint.warning('  ← next') : ''}`,
    paragraph(standingText(stage, paint), '  '),
    ...stage.holdPoints.map((one) => holdPointText(one, paint, all)),
    ...(stage.holdPoints.length === 0 ? [paint.faint('  no hold points in library/stages.yaml')] : []),
    ...listed(stage.errors, all, (item) => paragraph(item.message, `  ${paint.error('error')} `)),
  ];
  return lines.join('\n');
}

function standingText({ standing, signoffs, records }: StageProgress, paint: TerminalPaint): string {
  const planned = records.planned > 0 ? `, ${records.planned} planned` : '';
  const held = `${counted(records.built, 'record')}${planned}`;
  const by = signoffs.map(({ signoff }) => `${signoff.by} (${signoff.role}) on ${signoff.date}`).join(', ');
  switch (standing) {
    case 'holds':
      return `${paint.good('signed')} by ${by}; ${held}`;
    case 'lapsed':
      return `${paint.warning('lapsed')}: signed by ${by}, and changed since; ${held}`;
    case 'not verified':
      return `${paint.warning('not verified')}: signed by ${by}, without a digest to compare; ${held}`;
    case 'open':
      return `not signed; ${held}`;
  }
}

function holdPointText({ holdPoint, state, metBy, gaps }: HoldPointProgress, paint: TerminalPaint, all: boolean): string {
  if (state === 'met') {
    const by = metBy.length === 0 ? '' : `: ${metBy.slice(0, LISTED).join(', ')}${more(metBy.length - LISTED)}`;
    return paragraph(`${holdPoint}${by}`, `  ${paint.good('met')}    `);
  }
  if (state === 'nothing yet')
    return paragraph(`${holdPoint}: nothing in this stage needs it yet`, `  ${paint.faint('nothing')} `);
  return [
    paragraph(holdPoint, `  ${paint.warning('unmet')}  `),
    ...listed(groupsOf(gaps), all, (group) => gapText(group, paint)),
  ].join('\n');
}

const more = (count: number): string => (count > 0 ? ` and ${count} more` : '');

function listed<T>(items: readonly T[], all: boolean, textOf: (item: T) => string): readonly string[] {
  const some = all ? items : items.slice(0, LISTED);
  const left = items.length - some.length;
  return [...some.map(textOf), ...(left > 0 ? [`         and ${left} more (--all shows them)`] : [])];
}

function gapText({ gap, ids }: GapGroup, paint: TerminalPaint): string {
  const { wouldMeet, message, who } = gap;
  const [first] = wouldMeet;
  const many = ids.length > 1 && first?.typeFor;
  const missing = many ? [wouldMeetText({ ...first, type: first.typeFor?.(ids) ?? '' })] : wouldMeet.map(wouldMeetText);
  const said = missing.length === 0 ? [message] : missing;
  return said.map((text, i) => paragraph(i === 0 ? `${text} ${paint.faint(`[${who}]`)}` : `or ${text}`, '         ')).join('\n');
}

interface GapGroup {
  readonly gap: HoldPointGap;
  readonly ids: readonly string[];
}

/** Those that one command would meet together are one. */
function groupsOf(gaps: readonly HoldPointGap[]): readonly GapGroup[] {
  const groups = new Map<string, GapGroup>();
  for (const gap of gaps) {
    const [first] = gap.wouldMeet;
    const key = first?.typeFor ? `${gap.who} ${first.typeFor([])}` : JSON.stringify([gap.message, first?.id, first?.type]);
    groups.set(key, { gap: groups.get(key)?.gap ?? gap, ids: [...(groups.get(key)?.ids ?? []), ...gap.ids] });
  }
  return [...groups.values()];
}

function wouldMeetText({ kind, id, what, type, place }: WouldMeet): string {
  const at = place ? ` (${place.file}:${place.line})` : '';
  const how = what.includes(type) ? '' : `: ${type}`;
  return `${id ?? `a ${kind}`}${at} ${what}${how}`;
}

function todayText({ next, today, for: one, shell }: ShownProgress, paint: TerminalPaint, all: boolean): string {
  if (one !== undefined && today.length === 0)
    return `Nothing for ${one} to do in the next stage. Whoever is next: shellbook progress ${shell}`;
  if (next === null && today.length === 0) return `Every stage is signed. Close the build: shellbook close ${shell}`;
  const heading = next === null ? 'To do' : `Next: stage ${next.stage}${one === undefined ? ` (${next.who.join('; ')})` : ''}`;
  const some = all ? today : today.slice(0, STEPS);
  const left = today.length - some.length;
  return [
    paint.strong(heading),
    ...some.map(({ who, stage, what, type, ids }) => {
      const others =
        ids.length > 1
          ? `, and ${ids.length - 1} like it (${ids.slice(1, LISTED).join(', ')}${ids.length > LISTED ? ', …' : ''})`
          : '';
      const how = type === null || what.includes(type) ? '' : `: ${type}`;
      return paragraph(`${who}: ${stage === next?.stage || stage === '' ? '' : `(${stage}) `}${what}${others}${how}`, '  - ');
    }),
    ...(left > 0 ? [`  and ${left} more (--all shows them)`] : []),
  ].join('\n');
}

function countsText({ counts, shell }: ShownProgress): string {
  const open = counts.warning - counts.decided;
  if (counts.error + open === 0) return 'The check of this shell finds no error and no open warning.';
  return `${counted(counts.error, 'error')} and ${counted(open, 'open warning')} in all: shellbook check ${shell}`;
}
