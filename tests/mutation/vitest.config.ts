import { defineConfig, mergeConfig } from 'vitest/config';
import base from '../vitest.config.js';

// The tests of behaviour only: those of the package as built see none of the mutants.
export default mergeConfig(base, defineConfig({ test: { exclude: ['tests/project/**'] } }));
