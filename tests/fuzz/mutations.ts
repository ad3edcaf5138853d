import fc from 'fast-check';
import { isMap, isScalar, isSeq, type Node, type Pair, parseDocument, Scalar, type YAMLMap, type YAMLSeq } from 'yaml';

/** What hands and enemies type where something else was meant. */
const ODD: readonly string[] = [
  '',
  ' ',
  '0',
  '-1',
  '1e308',
  '-1e308',
  '1e-320',
  'NaN',
  'Infinity',
  '.inf',
  '0x7f',
  '14,600 lb',
  '14600 kg',
  '5.25',
  '5-1/0 in',
  '1/0 in',
  '9999999999999999999999 in',
  '1e308 in',
  '5000000 in',
  '1e9 lb',
  '1e-9 mm',
  '6 ft',
  '3 in 4 ft',
  '-3 in',
  '12 %',
  '120 %',
  'yes',
  'null',
  '~',
  'true',
  '2026-02-30',
  '0000-00-00',
  '9999-12-31',
  '__proto__',
  'constructor',
  'toString',
  '../../etc/passwd',
  '-rf',
  '$(touch caught)',
  '{{constructor}}',
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  'url(https://example.org/x)',
  '=cmd()',
  '\u202Eabc',
  '\u0338 onclick=1 x',
  '</style><style>*{background:url(https://example.org/x)}',
  '</svg><a href="javascript:1">x</a>',
  '\u0007\u001b[31mred',
  '\ud83d\udea8',
  '\u0627\u0644\u0639\u0631\u0628\u064a\u0629',
  '\u6f22\u5b57',
  'x'.repeat(5000),
  'RT2x2x1/8',
  'T-1',
  'FL-1',
  'DC-1/1',
  'SF-L',
  'TROUGH',
  'AP-1',
];

type Change = (pick: Pick) => void;
/** Draws a number below the bound. */
type Pick = (below: number) => number;

interface Spots {
  readonly scalars: Scalar[];
  readonly maps: YAMLMap[];
  readonly lists: YAMLSeq[];
}

function spotsOf(root: Node | null): Spots {
  const spots: Spots = { scalars: [], maps: [], lists: [] };
  const walk = (node: unknown): void => {
    if (isScalar(node)) spots.scalars.push(node);
    else if (isMap(node)) {
      spots.maps.push(node);
      for (const pair of node.items as Pair[]) walk(pair.value);
    } else if (isSeq(node)) {
      spots.lists.push(node);
      for (const item of node.items) walk(item);
    }
  };
  walk(root);
  return spots;
}

const some = <T>(list: readonly T[], pick: Pick): T | undefined => (list.length === 0 ? undefined : list[pick(list.length)]);

/** Changes by which a record differs from what was meant: each on the structure of the file, so that the form is met and passed. */
function changesOf(spots: Spots): readonly Change[] {
  const { scalars, maps, lists } = spots;
  return [
    (pick) => {
      const one = some(scalars, pick);
      if (one) one.value = some(ODD, pick) as string;
    },
    (pick) => {
      const [a, b] = [some(scalars, pick), some(scalars, pick)];
      if (a && b) [a.value, b.value] = [b.value, a.value];
    },
    (pick) => {
      const map = some(maps, pick);
      if (map && map.items.length > 0) map.items.splice(pick(map.items.length), 1);
    },
    (pick) => {
      const map = some(maps, pick);
      const pair = map && some(map.items as Pair[], pick);
      if (pair && isScalar(pair.key)) pair.key.value = some(ODD, pick) || 'key';
    },
    (pick) => {
      const pair = some(
        maps.flatMap((map) => map.items as Pair[]),
        pick,
      );
      const other = some<Node>([...scalars, ...maps, ...lists], pick);
      if (pair && other) pair.value = other;
    },
    (pick) => {
      const list = some(lists, pick);
      if (list && list.items.length > 0) list.items.splice(pick(list.items.length), 1);
    },
    (pick) => {
      const list = some(lists, pick);
      const item = list && some(list.items, pick);
      if (list && item) for (let i = 0; i <= pick(3); i++) list.items.push(item);
    },
    (pick) => {
      const list = some(lists, pick);
      if (list) list.items.reverse();
    },
    (pick) => {
      const list = some(lists, pick);
      list?.items.splice(pick(list.items.length + 1), 0, new Scalar(some(ODD, pick)));
    },
    (pick) => {
      const one = some(scalars, pick);
      const number = /-?\d+(?:\.\d+)?/u.exec(String(one?.value));
      const factor = some([0, -1, 12, 25.4, 1e6, 1e-6], pick) as number;
      if (one && number) one.value = String(one.value).replace(number[0], String(Number(number[0]) * factor));
    },
    (pick) => {
      const one = some(scalars, pick);
      const unit = some(['in', 'mm', 'ft', 'lb', 'kg', 'psi', 'A', 'V', 'gal', 'C', ''], pick) as string;
      if (one) one.value = `${String(one.value).replace(/\s*[A-Za-z%]+\d?$/u, '')} ${unit}`;
    },
  ];
}

/** Cuts and splices of the text itself: what is left of a file after a crash, a bad merge, a wrong editor. */
const TEXT_CHANGES: readonly ((text: string, pick: Pick) => string)[] = [
  (text, pick) => text.slice(0, pick(text.length + 1)),
  (text, pick) => {
    const at = pick(text.length + 1);
    return text.slice(0, at) + (some(ODD, pick) as string) + text.slice(at);
  },
  (text, pick) => {
    const [from, length] = [pick(text.length + 1), pick(30)];
    return text.slice(0, from) + text.slice(from + length);
  },
  (text) => text.replaceAll('\n', '\r\n'),
  (text, pick) => text.replaceAll('  ', pick(2) === 0 ? '\t' : ' '),
  (text) => `\uFEFF${text}`,
  (text) => text + text,
  (text) => `<<<<<<< HEAD\n${text}=======\n${text}>>>>>>> other\n`,
];

/** A store with one to six changes in it. Draws come from a list, so that a failing store shrinks to its few changes. */
export function mutate(files: Readonly<Record<string, string>>, draws: readonly number[]): Readonly<Record<string, string>> {
  const result = { ...files };
  const names = Object.keys(files).filter((name) => name.endsWith('.yaml'));
  let at = 0;
  const pick: Pick = (below) => (below <= 0 ? 0 : (draws[at++ % draws.length] as number) % below);
  const count = 1 + pick(6);
  for (let i = 0; i < count; i++) {
    const name = some(names, pick) as string;
    const text = result[name] as string;
    if (pick(5) === 0) {
      result[name] = (some(TEXT_CHANGES, pick) as (typeof TEXT_CHANGES)[number])(text, pick);
      continue;
    }
    const document = parseDocument(text, { schema: 'failsafe', logLevel: 'silent' });
    const changes = changesOf(spotsOf(document.contents));
    (some(changes, pick) as Change)(pick);
    try {
      result[name] = document.toString({ lineWidth: 0 });
    } catch {
      // Some changes make what YAML cannot write down, as a list within itself.
    }
  }
  return result;
}

export const draws = fc.array(fc.nat({ max: 1_000_000 }), { minLength: 24, maxLength: 60 });
