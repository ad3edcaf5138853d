/**
 * npm runs this before the install scripts of the packages that come with shellbook. The browser's package would download a browser of
 * its own then, which nobody here uses and without which an install behind a firewall fails: a settings file in that package's own folder
 * says no, and reaches no other program.
 */
import { existsSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const SETTINGS = '.puppeteerrc.json';

for (let folder = path.dirname(fileURLToPath(import.meta.url)); folder !== path.dirname(folder); folder = path.dirname(folder)) {
  const browser = path.join(folder, 'node_modules', 'puppeteer');
  if (!existsSync(path.join(browser, 'package.json'))) continue;
  if (!existsSync(path.join(browser, SETTINGS))) writeFileSync(path.join(browser, SETTINGS), '{ "skipDownload": true }\n');
  break;
}
