import path from 'node:path';
import type { LayerMeaning } from '../entry/dxf/layers.js';
import type { Pieces } from '../entry/dxf/pieces.js';
import type { DrawingPlan } from '../entry/dxf/plan.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import type { Status } from './io.js';
import { committed, type OpenEntry, readEntry, storeOf, writeTexts } from './open-entry.js';

export interface DxfOptions {
  readonly file: string;
  readonly shell: string | undefined;
  readonly layers: readonly string[];
  readonly unit: string | undefined;
  readonly dryRun: boolean;
  readonly yes: boolean;
  readonly keep: boolean;
  readonly ahead: boolean;
  readonly commit: boolean;
}

/** A frame of a coach, whatever else is drawn beside it, has some million bytes. */
const LARGEST_BYTES = 192 * 1024 * 1024;
/** `$INSUNITS` of a drawing → mm. */
const MM: Readonly<Record<number, number>> = { 1: 25.4, 2: 304.8, 4: 1, 5: 10, 6: 1000 };
const NAMED: Readonly<Record<string, number>> = { in: 1, ft: 2, mm: 4, cm: 5, m: 6 };

/** Takes the pieces of a DXF drawing in as members, panels and openings, by layer. */
export async function importDrawing(options: DxfOptions, context: Context): Promise<Status> {
  const { shell } = options;
  if (shell === undefined) throw new UserError('Which coach is this drawing of? Name the shell, such as --shell QF-007');
  const [{ keptLayers, saidLayers }, { entering }] = await Promise.all([
    import('../entry/dxf/layers.js'),
    import('./entering.js'),
  ]);
  const root = await storeOf(context);
  const name = path.basename(options.file);
  const text = await textOf(options.file, name, context);
  const before = await readEntry(root, shell);
  const said = saidLayers(options.layers);
  const layers = new Map([...keptLayers(before.text.files.get('import.yaml')), ...said]);
  const first = await piecesIn(name, text, layers, options, before);
  const done = (made: DrawingPlan) => answer({ name, ...first, ...made }, options, context);
  if (options.dryRun) return done(await planned(name, first, before, options));
  if (first.pieces.unmapped.size > 0 && !options.yes) throw new UserError(unmappedText(name, first.pieces.unmapped));
  return entering(
    root,
    () => `import dxf ${name}`,
    async (writer) => {
      // As the store stands now that nobody else writes to it.
      const now = await readEntry(root, shell);
      const made = await planned(name, await piecesIn(name, text, layers, options, now), now, options);
      if (made.plan.faults.length > 0) return done(made);
      await writeTexts(writer, made.texts, now.known);
      const kept = options.keep && said.size > 0 && (await keepLayers(writer, said));
      const files = [...made.texts.keys(), ...(kept ? ['import.yaml'] : [])];
      const { plannedCounts } = await import('./report/import-text.js');
      const message = `Record ${plannedCounts([...made.plan.added, ...made.plan.changed])} of ${shell} from ${name}`;
      if (options.commit && files.length > 0) context.tell(await committed(root, files, message));
      return done(made);
    },
  );
}

async function textOf(file: string, name: string, context: Context): Promise<string> {
  const { readGivenFile } = await import('../store/given-file.js');
  const bytes = await readGivenFile(path.resolve(context.io.cwd, file), file, LARGEST_BYTES, 'a DXF drawing of one coach');
  const start = bytes.toString('latin1', 0, 24);
  if (bytes.length < 8)
    throw new UserError(
      `${name} holds ${bytes.length === 1 ? 'one byte' : `${bytes.length} bytes`}, expected a DXF drawing: it was not saved or copied whole`,
    );
  if (/^AC10\d\d/u.test(start))
    throw new UserError(`${name} is a drawing in a closed format (DWG), expected DXF: save it as DXF in text form`);
  if (/ Binary DXF/u.test(start)) throw new UserError(`${name} is a binary DXF, expected one in text form: save it as ASCII DXF`);
  if (/^ISO-10303-21/u.test(start))
    throw new UserError(`${name} is a STEP file, expected DXF: save the frame’s middle lines and the panels’ outlines as DXF`);
  return new TextDecoder('utf-8').decode(bytes);
}

interface Read {
  readonly pieces: Pieces;
  readonly others: ReadonlyMap<string, number>;
  readonly unit: 'in' | 'mm';
}

async function piecesIn(
  name: string,
  text: string,
  layers: ReadonlyMap<string, LayerMeaning>,
  options: DxfOptions,
  { known, text: store }: OpenEntry,
): Promise<Read> {
  const [{ readDxf }, { expandDrawing }, { drawnPieces }, { loadStore }] = await Promise.all([
    import('../entry/dxf/read.js'),
    import('../entry/dxf/expand.js'),
    import('../entry/dxf/pieces.js'),
    import('../model/load.js'),
  ]);
  const drawing = readDxf(name, text);
  const units = options.unit === undefined ? drawing.units : NAMED[options.unit];
  const mmPerUnit = MM[units ?? 0];
  if (mmPerUnit === undefined) {
    const wanted = `expected its unit, as --unit in (one of ${Object.keys(NAMED).join(', ')})`;
    throw new UserError(
      options.unit === undefined
        ? `${name} does not say what its numbers are, ${wanted}`
        : `Found --unit ${options.unit}, ${wanted}`,
    );
  }
  const shell = loadStore(store).shells.get(options.shell as string)?.model?.shell;
  const pieces = drawnPieces({ drawing: expandDrawing(drawing), layers, mmPerUnit, shell, known });
  return { pieces, others: drawing.others, unit: mmPerUnit === 25.4 || mmPerUnit === 304.8 ? 'in' : 'mm' };
}

async function planned(name: string, { pieces, unit }: Read, { known }: OpenEntry, options: DxfOptions): Promise<DrawingPlan> {
  const [{ planPieces }, { LARGEST_BYTES: mostBytes }] = await Promise.all([
    import('../entry/dxf/plan.js'),
    import('../store/taken.js'),
  ]);
  return planPieces({ name, pieces: pieces.pieces, known, unit, ahead: options.ahead, mostBytes });
}

function unmappedText(name: string, unmapped: ReadonlyMap<string, number>): string {
  const layers = [...unmapped].map(([layer, count]) => `${layer} (${count})`);
  const shown = layers.length > 12 ? `${layers.slice(0, 12).join(', ')} and ${layers.length - 12} more` : layers.join(', ');
  const [first] = unmapped.keys();
  return `${name}: nobody has said what is on layer ${shown}. Say it, as --layer '${first}=member, section=RT2x2x1/8, alloy=6061-T6' or --layer '${first}=skip', and add --keep for the next drawing; --yes leaves such layers out. Nothing was written.`;
}

async function keepLayers(
  writer: { update(file: string, change: (old: string | null) => string): Promise<boolean> },
  said: ReadonlyMap<string, LayerMeaning>,
): Promise<boolean> {
  const [{ withLayers }, { COLUMNS_FILE }] = await Promise.all([import('../entry/dxf/layers.js'), import('../store/layout.js')]);
  return writer.update(COLUMNS_FILE, (old) => withLayers(old, said));
}

async function answer(
  shown: Read & DrawingPlan & { readonly name: string },
  options: DxfOptions,
  context: Context,
): Promise<Status> {
  const { drawingJson, drawingText } = await import('./report/drawing-text.js');
  const { shell, dryRun } = options;
  context.print(context.settings.json ? drawingJson(shown, shell as string, dryRun) : drawingText(shown, dryRun));
  return shown.plan.faults.length > 0 ? 2 : 0;
}
