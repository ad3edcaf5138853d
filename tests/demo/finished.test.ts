import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import exifr from 'exifr';
import { beforeAll, describe, expect, it } from 'vitest';
import { MEDIA } from '../../src/records/index.js';
import { DEMO, judged, libraryFindings } from './store.js';

const PHOTOS = path.join(DEMO, 'shells/OV-021/photos');

describe('the finished demo shell', () => {
  let one: ReturnType<typeof judged>;
  beforeAll(() => {
    one = judged('OV-021');
  });

  it('has no error and no undecided warning, nor has the library', () => {
    const blocking = one.findings.filter(
      (finding) => finding.severity === 'error' || (finding.severity === 'warning' && finding.decidedBy === undefined),
    );
    expect(blocking.map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
    expect(libraryFindings).toEqual([]);
  });

  it('shows at least one warning that was decided by name', () => {
    expect(one.findings.some((finding) => finding.severity === 'warning' && finding.decidedBy !== undefined)).toBe(true);
  });

  it('is as large as a real coach', () => {
    const { shell } = one.assessment.model;
    const access = shell.panels.filter((panel) => panel.panelKind === 'access');
    expect({
      members: shell.members.length >= 350,
      welds: shell.welds.length >= 500,
      panels: shell.panels.length >= 80,
      access: access.length >= 25,
      runs: shell.runs.length >= 150,
      nodes: shell.nodes.length >= 300,
      tickets: shell.tickets.length >= 8,
      photos: shell.photos.length >= 60,
    }).toEqual({ members: true, welds: true, panels: true, access: true, runs: true, nodes: true, tickets: true, photos: true });
    const media = new Set(shell.services.map((service) => service.medium));
    expect(MEDIA.filter((medium) => !media.has(medium))).toEqual(['refrigerant', 'fuel']);
  });

  it('has a weld for every joint that its geometry has, and every node in reach', () => {
    const { joints, access } = one.assessment.figures;
    expect(joints.missing).toEqual([]);
    expect(joints.withoutJoint).toEqual([]);
    expect(joints.found).toBeGreaterThan(800);
    expect(access.coverage.nodesInReach).toBe(access.coverage.nodes);
  });

  it('keeps more than 5 % in hand on every axle with the tag down', () => {
    const { conditions } = one.assessment.figures.weights;
    const small = conditions
      .filter((condition) => !condition.axles.some((axle) => axle.lifted))
      .flatMap((condition) =>
        condition.axles
          .filter((axle) => (axle.marginKg ?? 0) < 0.05 * (axle.limitKg ?? 0))
          .map((axle) => `${condition.name} ${axle.axle}`),
      );
    expect(small).toEqual([]);
  });

  it('weighs what it says: every ticket verified, and less than 1 % unexplained', () => {
    const { tickets } = one.assessment.figures.weights;
    expect(tickets.map((ticket) => ticket.verified)).toEqual(tickets.map(() => true));
    for (const ticket of tickets) expect(Math.abs(ticket.residualKg) / ticket.totalKg).toBeLessThan(0.01);
  });

  it('has pictures of the size and with the traces that a telephone leaves', async () => {
    const { photos } = one.assessment.model.shell;
    let turned = 0;
    let located = 0;
    let bytes = 0;
    for (const photo of photos) {
      const file = path.join(PHOTOS, photo.file);
      const data = readFileSync(file);
      bytes += data.length;
      expect(statSync(file).size).toBeLessThanOrEqual(60 * 1024);
      expect(createHash('sha256').update(data).digest('hex')).toBe(photo.sha256);
      const exif = (await exifr.parse(data, { translateValues: false })) as { Orientation?: number } | undefined;
      if (exif?.Orientation === 6) turned += 1;
      if (await exifr.gps(data)) located += 1;
    }
    expect(turned).toBeGreaterThan(3);
    expect(located).toBeGreaterThan(3);
    expect(bytes).toBeLessThan(4e6);
  });
});
