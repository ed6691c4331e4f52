// What ids, codes and language tags look like, wherever they stand: as file names, in YAML, in the register.

/** Exercises, levels, practitioners. */
export const ID = /^[a-z0-9][a-z0-9-]{0,62}$/;

/** Plans and people. */
export const CODE = /^[A-Za-z0-9][A-Za-z0-9-]{0,62}$/;

/** BCP 47, as far as its form goes. */
export const LANGUAGE = /^[A-Za-z]{2,8}(?:-[A-Za-z0-9]{1,8})*$/;
