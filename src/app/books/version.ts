/** The program's version, as package.json has it (the bundle cannot read a file outside of its parts). */
export const VERSION = '0.3.0';
