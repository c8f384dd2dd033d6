export * from './book.ts';
export * from './layer.ts';
export * from './material.ts';
export * from './place.ts';
export * from './process.ts';
export * from './recipe.ts';
export * from './value.ts';
