/** Between the origins of a row of the register that has several: the page writes it, the script that narrows reads it. */
export const BETWEEN_ORIGINS = '|';
