export * from './figure.ts';
export * from './bench.ts';
