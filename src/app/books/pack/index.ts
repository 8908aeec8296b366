export { PackPart } from './PackPart.tsx';
