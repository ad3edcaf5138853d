import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly photo: string;
  readonly out?: string;
  readonly mark?: string;
}

/** Width of the drawing that is laid over a picture, mm: lettering is then 2.3 mm on a page of that width. */
const WIDTH_MM = 180;

export function declareOverlay(registry: Registry): void {
  registry
    .add('overlay <shell> <photo>', 'draws what is recorded onto a photo', [
      'shellbook overlay QF-007 P-0231',
      'shellbook overlay QF-007 P-0231 --out p-0231-drawn.jpg',
      'shellbook overlay QF-007 P-0231 --mark p-0231.html',
    ])
    .option('--out <file>', 'write the picture with the record drawn on it, as JPEG')
    .option('--mark <file>', 'write a page for any browser, to pick the points in the picture')
    .action(
      registry.run(
        ([shell, photo], { out, mark }) => ({
          shell: shell as string,
          photo: photo as string,
          ...(out === undefined ? {} : { out: out as string }),
          ...(mark === undefined ? {} : { mark: mark as string }),
        }),
        lay,
      ),
    );
}

async function lay(options: Options, context: Context): Promise<Status> {
  const [{ openPhoto }, { overlay }] = await Promise.all([
    import('../solved-photo.js'),
    import('../../compute/pictures/overlay.js'),
  ]);
  const { opened, solved, fitted, root, bytes } = await openPhoto(options.shell, options.photo, context);
  const { model } = opened.assessment;
  if (options.mark !== undefined) {
    const [{ markPage }, { writeOut }, { default: path }] = await Promise.all([
      import('../mark-page.js'),
      import('../../store/write-out.js'),
      import('node:path'),
    ]);
    await writeOut(root, path.resolve(context.io.cwd, options.mark), await markPage(model, await fitted(), await bytes()));
    context.tell(`Written: ${options.mark}. Open it in a browser, pick seven points or more, and put the lines into photos.yaml`);
    return 0;
  }
  const made = opened.assessment.figures.overlays.get(options.photo) ?? overlay(model, await fitted());
  if (options.out !== undefined && solved.usable) {
    const [{ photoOverlay }, { pictureWith }, { writeOut }, { default: path }] = await Promise.all([
      import('../../drawing/views/photo-overlay.js'),
      import('../picture-file.js'),
      import('../../store/write-out.js'),
      import('node:path'),
    ]);
    const out = path.resolve(context.io.cwd, options.out);
    await writeOut(root, out, await pictureWith(await bytes(), photoOverlay(model, made, WIDTH_MM)));
  }
  if (context.settings.json) {
    const { overlayJson } = await import('../report/overlay-json.js');
    context.print(overlayJson(opened.assessment.model.shell.id, made, opened.revision));
  } else {
    const { overlayText } = await import('../report/overlay-text.js');
    context.print(overlayText(made, model.shop.units, solved.usable ? options.out : undefined));
  }
  return solved.usable ? 0 : 1;
}
