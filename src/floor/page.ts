import { createHash } from 'node:crypto';
import { render, templateText } from '../book/templates.js';
import type { Model } from '../model/shell.js';
import { planDrawing, windowOf } from '../pocket/plan-svg.js';
import type { CoachView } from '../pocket/views.js';
import { type Reader, say } from '../words/index.js';
import type { FloorData } from './floor-data.js';
import { TASK_STROKES } from './task-pictures.js';
import { TASKS } from './tasks.js';

export interface FloorPageInput {
  readonly data: FloorData;
  readonly reader: Reader;
  readonly model: Model;
  readonly views: readonly CoachView[];
  readonly revision: string | null;
  /** The page's script, bundled. */
  readonly script: string;
}

const hashOf = (text: string): string => `sha256-${createHash('sha256').update(text).digest('base64')}`;
const FIRST_SCRIPT = "document.documentElement.classList.add('js')";

/** One file for a phone to enter records with: no request of any kind, its text inert. */
export function floorPage({ data, reader, model, views, revision, script }: FloorPageInput): string {
  const style = `${templateText('pocket.css')}${templateText('floor.css')}`;
  // Within a script element nothing may look like its end.
  const json = JSON.stringify(data).replaceAll('<', '\\u003c');
  const own = script.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
  const people = data.refs.person ?? [];
  return [
    `<!doctype html>\n<html lang="${reader.language}">\n<head>\n<meta charset="utf-8">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data: blob:; style-src '${hashOf(style)}'; script-src '${hashOf(FIRST_SCRIPT)}' '${hashOf(own)}'; base-uri 'none'; form-action 'none'">`,
    '<meta name="referrer" content="no-referrer">',
    render('floor-head', { reader, shell: data.shell }),
    `<style>${style}</style>\n<script>${FIRST_SCRIPT}</script>\n</head>`,
    render('floor', {
      reader,
      shell: data.shell,
      people: people.map(([id, name]) => ({ id, name })),
      views: views.map((view) => {
        const { symbol, svg } = planDrawing(model, view, () => false);
        return { key: view.key, title: say(reader, `pocket.view.${view.key}`), window: windowOf(view), symbol, svg };
      }),
      tasks: TASKS.map((name) => ({ name, key: `floor.task.${name}`, strokes: TASK_STROKES[name] })),
      revision: revision?.slice(0, 10),
      fingerprint: data.fingerprint.slice(0, 12),
    }),
    `<script type="application/json" id="data">${json}</script>`,
    `<script>${own}</script>\n</body>\n</html>\n`,
  ].join('\n');
}
