export { keepPaper } from './keeping.ts';
export { PaperList } from './PaperList.tsx';
export { PaperPhoto } from './PaperPhoto.tsx';
export { PapersPart } from './PapersPart.tsx';
export { PhotoField } from './PhotoField.tsx';
