import { chmodSync, lstatSync, mkdirSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { privateFolder } from '../../src/book/print/cache.js';
import { findBrowser, type OpenBrowser, openChromium } from '../../src/book/print/chromium.js';
import { type BookDocument, sheetsOf } from '../../src/book/print/document.js';
import { printDocument } from '../../src/book/print/print.js';
import { UserError } from '../../src/user-error.js';

const document = (body: string): BookDocument => ({
  html: `<!doctype html><html lang="en"><title>x</title><body><section class="chapter" data-chapter="a">${body}</section></body></html>`,
  sheets: sheetsOf('a4'),
  chapters: [{ key: 'a', title: 'A' }],
  pictures: new Map(),
  runningLeft: 'left',
  runningFoot: 'foot',
  date: '2026-01-02',
  warnings: [],
});

describe('the browser', () => {
  let browser: OpenBrowser;
  beforeAll(async () => {
    browser = await openChromium();
  });
  afterAll(() => browser?.close());

  it('fetches nothing, whatever the page asks for', async () => {
    const asked: string[] = [];
    const server = createServer((request, response) => {
      asked.push(request.url ?? '');
      response.end('x');
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    try {
      const wanted = `<p>Hello</p><img src="${url}/a.png"><link rel="stylesheet" href="${url}/b.css"><iframe src="${url}/c"></iframe>`;
      const script = `<script>document.body.innerHTML='<img src="${url}/d">'</script><p style="background:url(${url}/e)">x</p>`;
      const printed = await printDocument(browser, document(wanted + script));
      expect(printed.pageCount).toBe(1);
      expect(asked).toEqual([]);
    } finally {
      server.close();
    }
  });

  it('writes no book whose pages are not the planned ones', async () => {
    const torn = '<div><p>one</p><p style="break-before: page">two</p></div>';
    await expect(printDocument(browser, document(torn))).rejects.toThrow(/2 pages where 1 were planned/u);
  });
});

describe('finding a browser', () => {
  it('says what to do where the named program is none', async () => {
    const wrong = findBrowser({ PUPPETEER_EXECUTABLE_PATH: path.join(tmpdir(), 'no-such-browser') });
    await expect(wrong).rejects.toThrow(UserError);
    await expect(wrong).rejects.toThrow(/PUPPETEER_EXECUTABLE_PATH names/u);
  });
});

describe('the private folder', () => {
  const home = mkdtempSync(path.join(tmpdir(), 'shellbook-test-'));
  afterAll(() => rmSync(home, { recursive: true, force: true }));
  const mode = (folder: string) => lstatSync(folder).mode & 0o777;

  it('is ours alone', () => {
    const { folder, temporary } = privateFolder('one', { XDG_CACHE_HOME: home });
    expect([temporary, mode(folder)]).toEqual([false, 0o700]);
  });

  it('is closed where others could read it', () => {
    mkdirSync(path.join(home, 'shellbook', 'two'), { mode: 0o755 });
    expect(mode(privateFolder('two', { XDG_CACHE_HOME: home }).folder)).toBe(0o700);
  });

  it('is not trusted where others could write: a fresh one is used instead', () => {
    const open = path.join(home, 'shellbook', 'open');
    mkdirSync(open);
    chmodSync(open, 0o777);
    const { folder, temporary } = privateFolder('open', { XDG_CACHE_HOME: home });
    expect([temporary, folder === open]).toEqual([true, false]);
    rmSync(folder, { recursive: true });
  });

  it('is never somebody’s link: a fresh one is used instead', () => {
    const elsewhere = mkdtempSync(path.join(tmpdir(), 'shellbook-test-'));
    symlinkSync(elsewhere, path.join(home, 'shellbook', 'three'));
    const { folder, temporary } = privateFolder('three', { XDG_CACHE_HOME: home });
    expect(temporary).toBe(true);
    expect(folder).not.toContain(home);
    for (const one of [folder, elsewhere]) rmSync(one, { recursive: true });
  });
});
