export * from '../sections/solids.js';
