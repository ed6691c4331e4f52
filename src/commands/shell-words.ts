// What is put into a command line for a shell to read.

/** One word, in quotes where a shell would take it apart. */
export function inShell(text: string): string {
  return /^[\w./@%+,:-]+$/.test(text) ? text : `'${text.replaceAll("'", "'\\''")}'`;
}
