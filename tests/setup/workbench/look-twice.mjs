// A machine that does other work now and then is slower than every clock, and a window is laid out anew between a look and a
// click. What was not seen is looked for once more; what fails twice has failed, and the first reason is always told.

/** Whether `look` came to its end, at the first or at the second try. */
export async function lookTwice(name, look) {
  for (const last of [false, true]) {
    try {
      await look();
      console.log(`  seen: ${name}`);
      return true;
    } catch (error) {
      console.error(`  not seen${last ? '' : ' yet'}: ${name}: ${error instanceof Error ? error.message : error}`);
    }
  }
  return false;
}
