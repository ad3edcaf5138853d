import exifr from 'exifr';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { preparePhotos } from '../../src/book/photos.js';
import type { Photo } from '../../src/records/index.js';
import { record } from '../support/build.js';

const photo = (id: string): Photo => ({ ...record(id), file: `${id}.jpg`, of: [] });
const plain = sharp({ create: { width: 3000, height: 2000, channels: 3, background: '#a07040' } });
const prepare = async (bytes: Buffer | undefined) => (await preparePhotos([photo('P-1')], async () => bytes)).all[0];

describe('photos', () => {
  it('turns upright, makes small and strips the place', async () => {
    // EXIF orientation 6: the camera lay on its side, the picture has to be turned by 90° (CIPA DC-008 Exif, tag 274).
    const given = await plain
      .clone()
      .withMetadata({ orientation: 6 })
      .withExifMerge({
        IFD3: { GPSLatitude: '47/1 30/1 0/1', GPSLatitudeRef: 'N', GPSLongitude: '8/1 0/1 0/1', GPSLongitudeRef: 'E' },
      })
      .jpeg()
      .toBuffer();
    expect((await exifr.gps(given))?.latitude).toBeCloseTo(47.5, 6);
    const one = await prepare(given);
    const told = await sharp(one?.bytes?.()).metadata();
    expect([told.width, told.height, told.orientation]).toEqual([933, 1400, undefined]);
    expect(told.exif).toBeUndefined();
    expect(await exifr.parse(one?.bytes?.() as Buffer).catch(() => undefined)).toBeUndefined();
  });

  it('says that a picture is missing, cut short or no picture', async () => {
    const whole = await plain.clone().jpeg().toBuffer();
    expect((await prepare(undefined))?.missing).toContain('not in the record');
    expect((await prepare(whole.subarray(0, whole.length / 2)))?.missing).toContain('cannot be read');
    expect((await prepare(Buffer.from('no picture at all')))?.missing).toContain('cannot be read');
  });

  it('does not open a file that unpacks to more pixels than a picture has', async () => {
    const bomb = await sharp({ create: { width: 12_001, height: 10_000, channels: 3, background: '#000000' } })
      .png()
      .toBuffer();
    expect((await prepare(bomb))?.missing).toContain('has more than 120 million pixels');
  });
});
