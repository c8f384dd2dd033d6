/** A number as drawings write it: `-5`, `.5`, `12.`, `1.5e-3`. An exponent of more than three digits is none of a place. */
export const numberPattern = '[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d{1,3})?';
