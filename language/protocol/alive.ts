/** Request `laybook/alive`, without parameters: answered at once by a server that can answer at all. */
export const aliveRequest = 'laybook/alive';
