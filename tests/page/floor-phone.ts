import { pathToFileURL } from 'node:url';
import type { BrowserContext, Page } from 'puppeteer';
import type { OpenBrowser } from '../../src/book/print/chromium.js';
import type { FloorFile } from '../../src/floor/hand-over.js';

const PHONE = { width: 390, height: 844, hasTouch: true, isMobile: true };

/** What every page of a test asked for, and what went wrong in one. */
export interface PhoneLog {
  readonly asked: string[];
  readonly wrong: string[];
}

export const newLog = (): PhoneLog => ({ asked: [], wrong: [] });
/** Requests that leave the phone. */
export const requestsIn = ({ asked }: PhoneLog): readonly string[] =>
  asked.filter((url) => !/^(?:file|data|blob|chrome):/u.test(url));

/** A phone with the floor page open, and the fingers on it. */
export class FloorPhone {
  /** Of whoever enters. */
  taps = 0;
  keys = 0;

  private constructor(
    readonly page: Page,
    private readonly file: string,
  ) {}

  /** `file`: of the page, or an address that `before` answers. `before` runs before the page does. */
  static async open(
    on: OpenBrowser['browser'] | BrowserContext,
    file: string,
    log: PhoneLog,
    before: (page: Page) => Promise<unknown> = async () => {},
  ): Promise<FloorPhone> {
    const page = await on.newPage();
    page.on('request', (request) => void log.asked.push(request.url()));
    page.on('pageerror', (error) => void log.wrong.push(String(error)));
    await page.setViewport(PHONE);
    await page.setOfflineMode(true);
    // What the page saves as a file stays in it, for the test to read.
    await page.evaluateOnNewDocument(() => {
      const saved: string[] = [];
      Object.assign(window, { saved });
      const { click } = HTMLAnchorElement.prototype;
      HTMLAnchorElement.prototype.click = function (this: HTMLAnchorElement) {
        if (this.download === '') click.call(this);
        else saved.push(decodeURIComponent(this.href.slice(this.href.indexOf(',') + 1)));
      };
    });
    await before(page);
    const phone = new FloorPhone(page, file);
    await phone.load();
    return phone;
  }

  async load(): Promise<void> {
    await this.page.goto(this.file.startsWith('http:') ? this.file : pathToFileURL(this.file).href);
    await this.page.waitForSelector('html[data-ready]');
  }

  async reload(): Promise<void> {
    await this.page.reload();
    await this.page.waitForSelector('html[data-ready]');
  }

  async who(person: string): Promise<void> {
    await this.page.select('#who', person);
    this.taps += 2;
  }

  async tap(selector: string): Promise<void> {
    this.taps++;
    await this.page.$eval(selector, (one) => (one as HTMLElement).click());
  }

  /** Opens a task from the first screen. */
  async task(name: string): Promise<void> {
    await this.page.$eval('#form [data-to="home"]', (one) => (one as HTMLElement).click());
    await this.tap(`#task-${name}`);
  }

  async type(key: string, text: string): Promise<void> {
    this.taps++;
    this.keys += text.length;
    await this.page.$eval(
      `[id="${key.startsWith('#') ? key.slice(1) : `f-${key}`}"]`,
      (one, value) => {
        (one as HTMLInputElement).value = value;
        one.dispatchEvent(new Event('input', { bubbles: true }));
      },
      text,
    );
  }

  /** What a form has in a field already is not typed again. */
  async fill(fields: Readonly<Record<string, string>>): Promise<void> {
    for (const [key, text] of Object.entries(fields)) if ((await this.field(key)) !== text) await this.type(key, text);
  }

  field(key: string): Promise<string> {
    return this.page.$eval(`[id="f-${key}"]`, (one) => (one as HTMLInputElement).value);
  }

  async give(key: string, file: string): Promise<void> {
    const input = await this.page.$(`#${key}`);
    await (input as unknown as { uploadFile(file: string): Promise<void> }).uploadFile(file);
  }

  text(selector: string): Promise<string> {
    return this.page.$eval(selector, (one) => one.textContent ?? '');
  }

  said(): Promise<string> {
    return this.text('#said');
  }

  warnings(): Promise<string> {
    return this.text('#warnings');
  }

  faults(): Promise<string> {
    return this.page.$$eval('#form .fault', (all) => all.map((one) => one.textContent).join(''));
  }

  kept(): Promise<number> {
    return this.page.$$eval('#kept-list li', (all) => all.length);
  }

  /** Taps Keep and waits until the phone's memory has it, or until something is wrong. Gives what is said then. */
  async keep(): Promise<string> {
    const before = await this.kept();
    await this.page.$eval('#said', (one) => one.replaceChildren());
    await this.tap('#keep');
    await this.page.waitForFunction(
      (count) =>
        document.querySelectorAll('#kept-list li').length > count ||
        [...document.querySelectorAll('#form .fault')].some((one) => one.textContent !== '') ||
        document.getElementById('said')?.textContent !== '',
      {},
      before,
    );
    return `${await this.faults()}${await this.said()}`;
  }

  async handOver(): Promise<FloorFile> {
    await this.tap('#hand');
    await this.page.waitForFunction(() => (window as unknown as { saved: string[] }).saved.length > 0);
    return this.saved();
  }

  async saved(): Promise<FloorFile> {
    return JSON.parse(
      await this.page.evaluate(() => (window as unknown as { saved: string[] }).saved.at(-1) as string),
    ) as FloorFile;
  }
}
