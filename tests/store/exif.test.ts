/** What is read of Exif, beside what another library (exifr) reads of the same files; written by libexif within sharp. */
import exifr from 'exifr';
import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { momentOf, readExif } from '../../src/store/exif.js';

const plain = () => sharp({ create: { width: 20, height: 10, channels: 3, background: '#456' } });
const exifOf = async (bytes: Buffer): Promise<Buffer | undefined> => (await sharp(bytes).metadata()).exif;

const GIVEN = {
  IFD0: { DateTime: '2026:04:09 08:00:00' },
  IFD2: {
    DateTimeOriginal: '2026:04:07 14:30:05',
    DateTimeDigitized: '2026:04:07 14:30:06',
    FocalLength: '43/10',
    FocalLengthIn35mmFilm: '26',
  },
  IFD3: { GPSImgDirectionRef: 'M', GPSImgDirection: '2105/10' },
};

describe('Exif', () => {
  it.each(['jpeg', 'png', 'webp'] as const)('is read of %s as another library reads it', async (kind) => {
    const bytes = await plain().toFormat(kind).withExif(GIVEN).toBuffer();
    const ours = readExif(await exifOf(bytes));
    const theirs = await exifr.parse(await plain().jpeg().withExif(GIVEN).toBuffer(), {
      reviveValues: false,
      translateValues: false,
      gps: true,
    });
    expect(ours).toMatchObject({
      dateTimeOriginal: theirs.DateTimeOriginal,
      dateTimeDigitized: theirs.CreateDate,
      focalLength: theirs.FocalLength,
      focalLengthIn35mm: theirs.FocalLengthIn35mmFormat,
      gpsImgDirection: theirs.GPSImgDirection,
    });
    expect(ours.focalLength).toBeCloseTo(4.3, 9);
  });

  it('that is damaged gives what is whole of it, and never fails', async () => {
    const whole = (await exifOf(await plain().jpeg().withExif(GIVEN).toBuffer())) as Buffer;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { maxLength: 12 }),
        fc.nat(whole.length),
        (changes, end) => {
          const bytes = Buffer.from(whole);
          for (const [at, value] of changes) bytes[at] = value;
          for (const value of Object.values(readExif(bytes.subarray(0, end))))
            expect(typeof value === 'number' || (typeof value === 'string' && value.length <= 64)).toBe(true);
        },
      ),
      { numRuns: Number(process.env.SHELLBOOK_FUZZ ?? 300) },
    );
  });

  it.each([
    ['9999:99:99 99:99:99', { wrong: '9999:99:99 99:99:99' }],
    ['2026:02:30 10:00:00', { wrong: '2026:02:30 10:00:00' }],
    ['2026:13:01 10:00:00', { wrong: '2026:13:01 10:00:00' }],
    ['2026:04:07 25:00:00', { wrong: '2026:04:07 25:00:00' }],
    ['1904:01:01 00:00:00', { wrong: '1904:01:01 00:00:00' }],
    ['yesterday', { wrong: 'yesterday' }],
    ['0000:00:00 00:00:00', undefined],
    ['    :  :     :  :  ', undefined],
    ['', undefined],
    [undefined, undefined],
    ['2026:04:07 14:30:05', { iso: '2026-04-07T14:30:05' }],
    ['2024:02:29 00:00:00', { iso: '2024-02-29T00:00:00' }],
    ['2026-04-07', { iso: '2026-04-07' }],
  ])('tells a moment from what is none: %j', (said, moment) => expect(momentOf(said)).toEqual(moment));
});
