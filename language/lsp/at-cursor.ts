/** What is shown of the place that somebody looks at. One part of the program, since both are made of the same. */
export { hoversOver } from '../view/hover/over-book.ts';
export { answerLayerCard } from './layer-card.ts';
