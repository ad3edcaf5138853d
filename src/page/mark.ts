/** The page on which points are picked in a photo: it runs by itself in a browser, asks for nothing and gives back lines of text. */
import { cornerNear, type GreyPicture } from '../compute/camera/corner.js';
import type { MarkPageData } from './mark-data.js';
import { saveFile } from './save-file.js';

interface Picked {
  /** What comes before `px` in the line, as `is: P-L-06, end: low`. */
  readonly as: string;
  readonly px: readonly [number, number];
}

const SNAP_PX = 14;
const LOUPE_TIMES = 4;

const element = <T extends Element>(id: string): T => document.getElementById(id) as unknown as T;
const data = JSON.parse(element<HTMLScriptElement>('data').textContent ?? '{}') as MarkPageData;
const image = element<HTMLImageElement>('photo');
const frame = element<HTMLDivElement>('frame');
const loupe = element<HTMLCanvasElement>('loupe');
const name = element<HTMLInputElement>('name');
const list = element<HTMLOListElement>('points');
const lines = element<HTMLTextAreaElement>('lines');
const say = element<HTMLParagraphElement>('say');
const snap = element<HTMLInputElement>('snap');

const names = new Map(data.points.map((one) => [one.label, one.as]));
const picked: Picked[] = [...data.picked];
/** Where the cross stands, in pixels of the photo itself. */
let cross: readonly [number, number] | undefined;
let grey: GreyPicture | undefined;

/** Pixels of the photo for one of the picture in this page. */
const scale = (): number => data.widthPx / image.naturalWidth;

function greyOf(): GreyPicture | undefined {
  if (grey) return grey;
  const canvas = document.createElement('canvas');
  canvas.width = image.naturalWidth;
  canvas.height = image.naturalHeight;
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context || canvas.width === 0) return undefined;
  context.drawImage(image, 0, 0);
  const { data: rgba } = context.getImageData(0, 0, canvas.width, canvas.height);
  const levels = new Uint8ClampedArray(canvas.width * canvas.height);
  for (let i = 0; i < levels.length; i++)
    levels[i] = 0.299 * (rgba[4 * i] as number) + 0.587 * (rgba[4 * i + 1] as number) + 0.114 * (rgba[4 * i + 2] as number);
  grey = { width: canvas.width, height: canvas.height, levels };
  return grey;
}

function pickAt(clientX: number, clientY: number): void {
  const box = image.getBoundingClientRect();
  const at: [number, number] = [
    ((clientX - box.left) / box.width) * image.naturalWidth,
    ((clientY - box.top) / box.height) * image.naturalHeight,
  ];
  const levels = snap.checked ? greyOf() : undefined;
  const found = levels ? cornerNear(levels, at[0], at[1], SNAP_PX) : undefined;
  const [u, v] = found ?? at;
  setCross([u * scale(), v * scale()]);
}

function setCross(px: readonly [number, number]): void {
  cross = [Math.min(data.widthPx, Math.max(0, px[0])), Math.min(data.heightPx, Math.max(0, px[1]))];
  draw();
}

function draw(): void {
  for (const old of frame.querySelectorAll('.mark')) old.remove();
  for (const [i, { px }] of picked.entries()) putMark(px, String(i + 1), 'mark');
  if (cross) putMark(cross, '', 'mark cross');
  paintLoupe();
  list.replaceChildren(...picked.map((one, i) => row(one, i)));
  lines.value = `seen: [${picked.map(({ as, px }) => `{${as}, px: [${px.map((one) => Math.round(one)).join(', ')}]}`).join(',\n  ')}]`;
}

function putMark(px: readonly [number, number], label: string, kind: string): void {
  const mark = document.createElement('span');
  mark.className = kind;
  mark.textContent = label;
  mark.style.left = `${(100 * px[0]) / data.widthPx}%`;
  mark.style.top = `${(100 * px[1]) / data.heightPx}%`;
  frame.append(mark);
}

function row({ as, px }: Picked, i: number): HTMLLIElement {
  const item = document.createElement('li');
  const words = document.createElement('span');
  words.textContent = `${as} at ${px.map((one) => Math.round(one)).join(', ')}`;
  const drop = document.createElement('button');
  drop.type = 'button';
  drop.textContent = 'Remove';
  drop.setAttribute('aria-label', `Remove point ${i + 1}`);
  drop.addEventListener('click', () => {
    picked.splice(i, 1);
    draw();
  });
  item.append(words, drop);
  return item;
}

function paintLoupe(): void {
  const context = loupe.getContext('2d');
  if (!context) return;
  const { width, height } = loupe;
  context.fillStyle = '#1c2126';
  context.fillRect(0, 0, width, height);
  if (!cross) return;
  const [u, v] = [cross[0] / scale(), cross[1] / scale()];
  const [w, h] = [width / LOUPE_TIMES, height / LOUPE_TIMES];
  context.imageSmoothingEnabled = false;
  context.drawImage(image, u - w / 2, v - h / 2, w, h, 0, 0, width, height);
  for (const [colour, wide] of [
    ['#ffffff', 3],
    ['#1c2126', 1],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = wide;
    context.beginPath();
    context.moveTo(width / 2, 0);
    context.lineTo(width / 2, height);
    context.moveTo(0, height / 2);
    context.lineTo(width, height / 2);
    context.stroke();
  }
}

/** `name` as it stands in the list, or a place in brackets. */
function asTyped(typed: string): string | undefined {
  const known = names.get(typed.trim());
  if (known !== undefined) return known;
  return /^\[[^[\]{}]+\]$/u.test(typed.trim()) ? `at: ${typed.trim()}` : undefined;
}

function addPoint(): void {
  const as = asTyped(name.value);
  if (!cross) say.textContent = 'Tap the picture first.';
  else if (as === undefined) say.textContent = 'Choose a name from the list, or type a place as [180 in, -50 in, 40 in].';
  else {
    picked.push({ as, px: cross });
    cross = undefined;
    name.value = '';
    say.textContent = `${picked.length} ${picked.length === 1 ? 'point' : 'points'}. ${picked.length < 7 ? 'Seven or more, spread over the picture, are enough for any photo.' : ''}`;
  }
  draw();
}

frame.addEventListener('pointerdown', (event) => {
  event.preventDefault();
  frame.setPointerCapture(event.pointerId);
  pickAt(event.clientX, event.clientY);
});
frame.addEventListener('pointermove', (event) => {
  if (event.buttons > 0) pickAt(event.clientX, event.clientY);
});
for (const [id, by] of [
  ['left', [-1, 0]],
  ['right', [1, 0]],
  ['up', [0, -1]],
  ['down', [0, 1]],
] as const)
  element<HTMLButtonElement>(id).addEventListener('click', () => cross && setCross([cross[0] + by[0], cross[1] + by[1]]));
element<HTMLButtonElement>('add').addEventListener('click', addPoint);
element<HTMLButtonElement>('save').addEventListener('click', () => {
  saveFile(`${data.photo}-seen.yaml`, 'text/yaml', `${lines.value}\n`);
});
element<HTMLButtonElement>('copy').addEventListener('click', () => {
  lines.select();
  document.execCommand('copy');
  say.textContent = 'Copied.';
});
if (image.complete) draw();
image.addEventListener('load', draw);
