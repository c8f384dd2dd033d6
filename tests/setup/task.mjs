// Runs a task file's own work when it is the program that was started, not when another file imports it.

/** `run` may return an exit code. An error shows as its message and ends with `exitCodeOnError`. */
export async function task(file, run, exitCodeOnError = 1) {
  if (process.argv[1] !== file) return;
  try {
    process.exitCode = (await run()) ?? 0;
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = exitCodeOnError;
  }
}
