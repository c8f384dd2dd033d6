export * from './place.ts';
export * from './value.ts';
export * from './material.ts';
export * from './book.ts';
export * from './recipe.ts';
export * from './layer.ts';
export * from './process.ts';
