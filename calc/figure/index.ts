export * from './bench.ts';
export * from './figure.ts';
export * from './finite.ts';
export * from './habit.ts';
export * from './inputs.ts';
