export * from './figure.ts';
export * from './bench.ts';
export * from './inputs.ts';
export * from './habit.ts';
export * from './finite.ts';
