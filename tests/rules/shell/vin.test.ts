import { describe, expect, it } from 'vitest';
import { VIN_FORM, vinCheckDigit } from '../../../src/records/vin.js';
import { vinCheckDigitRule } from '../../../src/rules/shell/vin-check-digit.js';
import { vinForm } from '../../../src/rules/shell/vin-form.js';
import { vinMissing } from '../../../src/rules/shell/vin-missing.js';
import { buildModel } from '../../support/build.js';
import { judgeOne } from '../judge-one.js';

const withVin = (vin?: string) => buildModel(vin === undefined ? {} : { vin });

describe('shell.vin-check-digit', () => {
  it.each([
    ['1M8GDM9AXKP042788', 'X'], // VIN-07: published worked example, sum 351
    ['LJCPCBLCX11000237', 'X'], // VIN-08: published worked example, sum 186
    ['11111111111111111', '1'], // VIN-09: every character 1, sum 89; computed
    ['00000000000000000', '0'], // VIN-10: every character 0; computed
    ['1HGCM82633A004352', '3'], // VIN-11: from memory, arithmetic checked
    ['5GZCZ43D13S812715', '1'], // VIN-12: from memory, arithmetic checked
  ])('passes %s', (vin, digit) => {
    expect(vinCheckDigit(vin)).toBe(digit);
    expect(judgeOne(vinCheckDigitRule, withVin(vin))).toEqual([]);
  });

  it.each([
    ['1M8GDM9A1KP042788', '1', 'X'], // VIN-13: wrong digit in position 9; computed
    ['1M8GDM9AXKP042789', 'X', '1'], // VIN-14: last character raised by one, sum 353; computed
    ['1M8GDM9AXKP042878', 'X', '0'], // VIN-15: positions 15 and 16 exchanged, sum 352; computed
    ['1M8GDM9AXPK042788', 'X', '4'], // VIN-16: positions 10 and 11 exchanged, sum 356; computed
  ])('refuses %s', (vin, found, expected) => {
    const [finding] = judgeOne(vinCheckDigitRule, withVin(vin));
    expect(finding?.severity).toBe('error');
    expect(finding?.message).toContain(`Found the check digit \`${found}\``);
    expect(finding?.message).toContain(`expected \`${expected}\``);
  });

  it('cannot see A read as J, which has the same value', () => {
    // VIN-17: 49 CFR 565.15(c) Table III gives both letters 1; sum 351, digit X
    expect(judgeOne(vinCheckDigitRule, withVin('1M8GDM9JXKP042788'))).toEqual([]);
  });

  it('only warns where the maker is not North American, because the digit is free there', () => {
    // ISO 3779 leaves position 9 to the maker
    expect(judgeOne(vinCheckDigitRule, withVin('LJCPCBLC011000237'))[0]?.severity).toBe('warning');
  });

  it('keeps still about a number of the wrong form', () => {
    expect(judgeOne(vinCheckDigitRule, withVin('1M8GDM9AXKPO42788'))).toEqual([]);
  });
});

describe('shell.vin-form', () => {
  // VIN-18, VIN-01, VIN-02: 49 CFR 565.13
  it.each([
    ['1M8GDM9AXKPO42788', '`O` in position 12'],
    ['1M8GDM9AXKP04278', '16 characters'],
    ['1M8GDM9AXKP0427888', '18 characters'],
    ['1m8GDM9AXKP042788', '`m` in position 2'],
  ])('refuses %s', (vin, why) => {
    expect(VIN_FORM.test(vin)).toBe(false);
    expect(judgeOne(vinForm, withVin(vin))[0]?.message).toContain(why);
  });

  it('passes 17 permitted characters, and a shell that has none yet', () => {
    expect(judgeOne(vinForm, withVin('1M8GDM9AXKP042788'))).toEqual([]);
    expect(judgeOne(vinForm, withVin())).toEqual([]);
  });
});

describe('shell.vin-missing', () => {
  it('is a note until there is one', () => {
    expect(judgeOne(vinMissing, withVin())[0]?.severity).toBe('note');
    expect(judgeOne(vinMissing, withVin('1M8GDM9AXKP042788'))).toEqual([]);
  });
});
