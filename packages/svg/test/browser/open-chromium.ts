import { existsSync } from "node:fs";
import { mkdtemp, rename, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import chromium from "@sparticuz/chromium";
import { type Browser, chromium as playwright } from "playwright-core";

const CACHE = "sheetwright-chromium-147.0.0";
/** Names a browser to use instead. */
const CHOSEN = "CHROME_PATH";
const TEMPORARY = "TMPDIR";

/**
 * Opens the Chromium that comes inside an npm package (Linux on x64), or an installed Chrome elsewhere or where the
 * variable CHROME_PATH names one. Only the package's own font is there to fall back on, so that machines with other fonts
 * measure alike.
 */
export async function openChromium(): Promise<Browser> {
  const installed = process.env[CHOSEN];
  if (installed !== undefined) return playwright.launch({ executablePath: installed, headless: true });
  if (process.platform !== "linux" || process.arch !== "x64") {
    return playwright.launch({ channel: "chrome", headless: true });
  }
  const folder = await unpack();
  return playwright.launch({
    executablePath: join(folder, "chromium"),
    args: chromium.args,
    headless: true,
    env: { ...process.env, FONTCONFIG_FILE: join(folder, "only-these-fonts.conf") },
  });
}

/** Unpacks once a machine; several processes may ask at the same time, and none sees half a browser. */
async function unpack(): Promise<string> {
  const folder = join(tmpdir(), CACHE);
  if (existsSync(folder)) return folder;
  const own = await mkdtemp(`${folder}-`);
  // The package unpacks into the folder for temporary files, and takes what it finds there for whole.
  const before = process.env[TEMPORARY];
  process.env[TEMPORARY] = own;
  try {
    await chromium.executablePath();
  } finally {
    if (before === undefined) delete process.env[TEMPORARY];
    else process.env[TEMPORARY] = before;
  }
  const fonts = join(folder, "fonts");
  await writeFile(
    join(own, "only-these-fonts.conf"),
    `<?xml version="1.0"?><fontconfig><dir>${fonts}</dir><cachedir>${join(folder, "font-cache")}</cachedir></fontconfig>\n`,
  );
  try {
    await rename(own, folder);
  } catch (error) {
    if (!existsSync(folder)) throw error;
    await rm(own, { recursive: true });
  }
  return folder;
}
