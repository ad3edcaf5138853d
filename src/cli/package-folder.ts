/**
 * The folder that the program was installed in. In `src/cli/` and `dist/cli/` as in `dist/program/`, where the built program is joined
 * into few files, it lies two levels up.
 */
export const PACKAGE_FOLDER = new URL('../../', import.meta.url);
