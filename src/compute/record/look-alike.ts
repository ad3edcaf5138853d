/** An id as the eye takes it, and what of it the eye cannot tell. */
export interface Looked {
  /** Equal for two ids that look alike. */
  readonly skeleton: string;
  /** Scripts of its letters, where there are several: `Latin and Cyrillic`. */
  readonly scripts: readonly string[];
  /** Signs that show nothing, as `U+200B`. */
  readonly invisible: readonly string[];
}

/**
 * Letters of other scripts beside the Latin letter that each is drawn as; from the data file of confusables of Unicode Technical Standard
 * 39, those with one Latin letter or digit as their prototype.
 */
const DRAWN_AS: Readonly<Record<string, string>> = {
  // Cyrillic
  ...pairs('аaеeоoрpсcуyхxіiјjѕsһhԁdԛqԝwѵvӏlгrьbбbАAВBЕEКKМMНHОOРPСCТTУYХXІIЈJЅSԌGԚQԜWҮYѴVӀlЗ3Б6'),
  // Greek
  ...pairs('αaιiκkνvοoρpσoυuγyϲcϳjΑAΒBΕEΖZΗHΙIΚKΜMΝNΟOΡPΤTΥYΧXϹCϜFϺM'),
  // Armenian, Cherokee
  ...pairs('օoսuոnհhզqցgՕOՍUԼLՏSᎪAᏴBᏟCᎠDᎬEᏀGᎻHᎫJᏦKᏞLᎷMᏢPᏚSᎢTᏙVᎳWᏃZ'),
  // Latin letters of other uses
  ...pairs('ıiɑaɡgʟLᴏoᴜuᴠvᴡwᴢzꜱsʏyɩiɪi'),
};

function pairs(text: string): Readonly<Record<string, string>> {
  const signs = [...text];
  return Object.fromEntries(signs.flatMap((sign, i) => (i % 2 === 0 ? [[sign, signs[i + 1] as string]] : [])));
}

const SCRIPTS = [
  'Latin',
  'Cyrillic',
  'Greek',
  'Armenian',
  'Cherokee',
  'Georgian',
  'Hebrew',
  'Arabic',
  'Han',
  'Hangul',
  'Thai',
] as const;
const OF_SCRIPT = new Map(SCRIPTS.map((name) => [name, new RegExp(`\\p{Script=${name}}`, 'u')]));
const INVISIBLE = /[\p{Default_Ignorable_Code_Point}\p{Cf}]/gu;
const ASCII = /^[ -~]*$/u;

/** Looks at an id as UTS 39 does: what shows nothing goes, wide and styled letters become plain, look-alikes become Latin. */
export function lookAt(id: string): Looked {
  if (ASCII.test(id)) return { skeleton: id, scripts: [], invisible: [] };
  const plain = id.replace(INVISIBLE, '').normalize('NFKC');
  const skeleton = [...plain]
    .map((sign) => DRAWN_AS[sign] ?? sign)
    .join('')
    .normalize('NFC');
  const scripts = SCRIPTS.filter((name) => OF_SCRIPT.get(name)?.test(plain));
  const invisible = [...id.matchAll(INVISIBLE)].map(([sign]) => codeOf(sign));
  return { skeleton, scripts: scripts.length > 1 ? scripts : [], invisible };
}

/** `U+0430` */
export const codeOf = (sign: string): string => `U+${(sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
