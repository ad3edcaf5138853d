import { fieldsInModel } from '../records/read-model.js';
import { LIMIT_FIELDS, type Limits } from '../records/shop.js';

export { HOT_MM } from '../records/shop.js';
export { contentsWords, densityOf, meansContents } from '../records/tank-contents.js';

/** The shop's limits where shop.yaml does not say otherwise. */
export const LIMITS = fieldsInModel(LIMIT_FIELDS, {}, { id: 'shop', read: {}, path: [] }) as unknown as Limits;

/** 68 kg (150 lb) for each designated seat: 49 CFR 571.110 S3, 567.4(g)(3). */
export const OCCUPANT_KG = 68;
