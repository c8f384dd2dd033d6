/**
 * Leaves out lines as long as the failure stays (after Zeller and Hildebrandt 2002, "Simplifying and Isolating
 * Failure-Inducing Input"): halves first, then ever smaller pieces. Stops after `most` trials.
 */
export async function fewestLines(
  lines: readonly string[],
  fails: (lines: readonly string[]) => Promise<boolean>,
  most = 200,
): Promise<readonly string[]> {
  let left = lines;
  let trials = 0;
  for (let piece = Math.ceil(left.length / 2); piece >= 1; piece = piece === 1 ? 0 : Math.ceil(piece / 2)) {
    for (let from = 0; from < left.length && trials < most; ) {
      const without = [...left.slice(0, from), ...left.slice(from + piece)];
      trials++;
      if (await fails(without)) left = without;
      else from += piece;
    }
  }
  return left;
}
