/**
 * Height of a capital in units of the font's size: 1493 of 2048 in DejaVu Sans (top of its glyph H), and near
 * enough in other sans serif letters.
 */
export const capitalHeight = 1493 / 2048;
