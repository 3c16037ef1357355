// Runs the viewer sample in Chromium: opens a report over its film, shows it, moves the first annotation, saves.
// Arguments: folder of the sample, film, report, file to write; prints what was opened and what was moved as JSON.
import { readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';

const [sample, film, report, target] = process.argv.slice(2);
const { chromium } = createRequire(path.resolve(sample, 'package.json'))('playwright-core');
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium', headless: true, args: ['--no-sandbox', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
});
try {
  const page = await browser.newPage();
  await page.setContent('<div id="film" style="width: 512px; height: 512px"></div>');
  await page.addScriptTag({ path: path.join(sample, 'dist', 'show-report.js') });
  const [filmText, reportText] = await Promise.all([film, report].map(async f => (await readFile(f)).toString('base64')));
  const result = await page.evaluate(async ([filmText, reportText]) => {
    const bytes = text => Uint8Array.from(atob(text), c => c.charCodeAt(0)).buffer;
    const opened = window.elbowReport.open(bytes(filmText), bytes(reportText));
    await window.elbowReport.show(document.getElementById('film'));
    await new Promise(done => setTimeout(done, 1500));
    const drawn = document.querySelectorAll('#film svg circle, #film svg path, #film svg line').length;
    const first = opened.findIndex(a => a.tool === 'Probe');
    const moved = window.elbowReport.move(first, 3.25, -1.5);
    const saved = new Uint8Array(window.elbowReport.save('Reader^Invented'));
    return { opened, drawn, first, moved, saved: btoa(Array.from(saved, b => String.fromCharCode(b)).join('')) };
  }, [filmText, reportText]);
  await writeFile(target, Buffer.from(result.saved, 'base64'));
  console.log(JSON.stringify({ ...result, saved: undefined }));
} finally {
  await browser.close();
}
