// A machine that does other work now and then is slower than every clock, and a window is laid out anew between a look and a
// click. What was not seen is looked for once more; what fails twice has failed, and the first reason is always told. Nothing is
// looked at for ever: neither one thing nor all of them.

const oneLookMs = 300_000;
const allLooksMs = 1_500_000;
const closingMs = 20_000;

/** Settles as `work` does, or throws after a time; what it threw later is nobody's. */
async function within(ms, what, work) {
  let timer;
  const late = new Promise((_, reject) => {
    timer = setTimeout(() => reject(new Error(`${what} took longer than ${ms / 1000} s`)), ms);
  });
  work.catch(() => undefined);
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}

/** The browser's windows closed: whatever still waits for one of them ends with an error. */
const closeWindows = (browser) =>
  within(closingMs, 'closing', Promise.all(browser.contexts().map((context) => context.close()))).catch(
    () => undefined,
  );

export const closeBrowser = (browser) => within(closingMs, 'closing', browser.close()).catch(() => undefined);

/** Looks at what windows of the browser show, until all the time is used up. */
export function looksOf(browser) {
  const end = Date.now() + allLooksMs;

  /** Whether `look` came to its end, at the first or at the second try. */
  async function lookTwice(name, look) {
    for (const last of [false, true]) {
      const left = end - Date.now();
      try {
        if (left <= 0) throw new Error('no time is left to look');
        await within(Math.min(left, oneLookMs), 'the look', look());
        console.log(`  seen: ${name}`);
        return true;
      } catch (error) {
        console.error(`  not seen${last ? '' : ' yet'}: ${name}: ${error instanceof Error ? error.message : error}`);
        await closeWindows(browser);
      }
    }
    return false;
  }
  return lookTwice;
}
