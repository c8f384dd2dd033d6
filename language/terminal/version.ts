/** The version of the tool; a test holds it equal to the package's. */
export const version = '0.1.0';
