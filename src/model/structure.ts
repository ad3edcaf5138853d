export * from '../records/index.js';
