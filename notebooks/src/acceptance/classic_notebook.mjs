// Opens a notebook in the classic Notebook in Chromium, runs all its cells as a person would, and looks at what shows.
// Usage: node classic_notebook.mjs SERVER_URL NOTEBOOK SCREENSHOT
import { chromium } from 'playwright-core';

const [serverUrl, notebook, screenshot] = process.argv.slice(2);
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
    '--disable-component-update', '--disable-sync'],
});

const fail = async (words) => {
  console.error(words);
  await browser.close();
  process.exit(1);
};

const page = await browser.newPage({ viewport: { width: 1200, height: 1600 } });
await page.goto(`${serverUrl}/notebooks/${notebook}`);
await page.waitForFunction(() => window.Jupyter?.notebook?.kernel?.is_connected(), null, { timeout: 60000 });
await page.waitForSelector('.kernel_idle_icon', { timeout: 60000 });
await page.evaluate(() => window.Jupyter.notebook.clear_all_output());
await page.evaluate(() => window.Jupyter.notebook.execute_all_cells());
await page.waitForFunction(() => {
  const code = window.Jupyter.notebook.get_cells().filter((c) => c.cell_type === 'code' && c.get_text().trim());
  return code.length > 0 && code.every((c) => typeof c.input_prompt_number === 'number');
}, null, { timeout: 180000 });

const seen = await page.evaluate(() => ({
  errors: [...document.querySelectorAll('.output_error')].map((e) => e.innerText),
  pictures: [...document.querySelectorAll('.output_svg svg, .output_png img, .output_html svg')]
    .filter((p) => p.getBoundingClientRect().width > 200 && p.getBoundingClientRect().height > 100).length,
  tables: document.querySelectorAll('.output_html table').length,
  cells: window.Jupyter.notebook.get_cells().filter((c) => c.cell_type === 'code').length,
}));
await page.screenshot({ path: screenshot, fullPage: false });
console.log(JSON.stringify(seen));
if (seen.errors.length) {
  await fail(`errors in ${notebook}: ${seen.errors.join('\n')}`);
}
if (seen.pictures < 3) {
  await fail(`only ${seen.pictures} charts are visible in ${notebook}`);
}
if (seen.tables < 2) {
  await fail(`only ${seen.tables} tables are visible in ${notebook}`);
}
await browser.close();
