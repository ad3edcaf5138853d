import fc from 'fast-check';

/**
 * For mutation runs only (`.stryker.config.mjs`): a changed program needs no smallest example of what is wrong with it, and no more
 * than the cases of a second to be found out.
 */
fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true, interruptAfterTimeLimit: 1000 });
