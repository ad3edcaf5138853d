import type { ShellProgress } from '../../closeout/stage-progress.js';
import type { WouldMeet } from '../../closeout/would-meet.js';
import type { Counts } from '../../rules/decide.js';
import { envelope, type Json } from './json.js';
import { openItemJson } from './open-items.js';

/** A shell's progress with what the answer says beside it. */
export interface ShownProgress extends ShellProgress {
  readonly shell: string;
  readonly state: string;
  readonly counts: Counts;
  /** Whose steps alone are shown, where that was asked. */
  readonly for: string | undefined;
}

export const progressJson = ({ shell, state, stages, next, today, counts }: ShownProgress, revision: string | null): string =>
  envelope('progress', shell, revision, {
    state,
    next: next ? { stage: next.stage, who: next.who } : null,
    today: today.map(({ who, stage, what, type, ids }) => ({ who, stage: stage === '' ? null : stage, what, type, ids })),
    stages: stages.map((stage) => ({
      stage: stage.stage,
      name: stage.name,
      standing: stage.standing,
      signed: stage.signoffs.map(({ signoff: { by, role, date }, standing }) => ({ by, role, date, standing })),
      records: { built: stage.records.built, planned: stage.records.planned },
      hold_points: stage.holdPoints.map(({ holdPoint, state: met, metBy, gaps }) => ({
        hold_point: holdPoint,
        state: met,
        met_by: metBy,
        unmet: gaps.map(({ message, ids, who, wouldMeet }) => ({ message, ids, who, would_meet: wouldMeet.map(wouldMeetJson) })),
      })),
      errors: stage.errors.map(openItemJson),
    })),
    counts: { ...counts },
  });

const wouldMeetJson = ({ kind, id, what, type, place }: WouldMeet): Json => ({
  kind,
  id: id ?? null,
  what,
  type,
  file: place?.file ?? null,
  line: place?.line ?? null,
});
