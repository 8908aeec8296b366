/** What the tables rest on, and how much of each source was seen. A key that is not here is the site's own word. */
export const GENETIC_SOURCES: Readonly<Record<string, string>> = {
  Brown2022:
    'Brown AR et al. 2022, PLoS ONE 17(10):e0276376, https://pmc.ncbi.nlm.nih.gov/articles/PMC9581371 (abstract and introduction seen)',
  Garcia2023:
    'Garcia-Elfring A et al. 2023, Piebaldism and chromatophore development in reptiles are linked to the tfec gene, Current Biology (abstract seen)',
  Tzika2024a:
    'Tzika AC 2024, On the role of TFEC in reptilian coloration, Front Cell Dev Biol 12:1358828, doi 10.3389/fcell.2024.1358828 (abstract seen)',
  Dao2023:
    'Dao UM et al. 2023, Stripes and loss of color in ball pythons are associated with variants affecting endothelin signaling, G3 13(7) (abstract seen; preprint doi 10.1101/2022.10.09.511500 and one index name the receptor EDNRB1, another index of the final paper EDNRB2). Which trade names map to which variant was NOT seen',
  Lederer2023:
    'Lederer I et al. 2023, quoted in OMIA 002758-51751, https://omia.org/OMIA002758/51751: MLPH c.4919_4923del, 50 Ghost all homozygous, 60 non-Ghost 57 wild + 3 het (seen)',
  Mallery2016:
    'Mallery & Carrillo 2016, A case study of sex-linkage in Python regius, Phyllomedusa (abstract seen in Portuguese: LOD > 179.1, incompletely dominant, XX/XY with recombination; counts and r NOT seen; volume/pages 15(1):29-42 from memory)',
  Gamble2017:
    'Gamble T et al. 2017, The discovery of XY sex chromosomes in a boa and python, Curr Biol 27(14):2148-2153 (abstract seen)',
  SexSnakes:
    'Review/genome study PMC11721783 (abstract seen): ZZ/ZW characterises caenophidian snakes; some boas and pythons non-homologous XX/XY',
  Rose2014:
    'Rose MP & Williams DL 2014, J Exotic Pet Med 23, https://www.repository.cam.ac.uk/handle/1810/245529 (abstract seen)',
  Starck2022:
    'Starck JM et al. 2022, PLoS ONE, doi 10.1371/journal.pone.0262788 (abstract seen: all spider animals studied wobbled; sacculus and canals malformed)',
  OMIA2130:
    'OMIA 002130-94885, https://omia.org/OMIA002130/94885/ citing Saenko et al. 2015 and Bechtel & Bechtel 1962, 1989 (seen)',
  Ullate2020: 'Ullate-Agote A et al. 2020, PNAS 117(42):26307-26317, doi 10.1073/pnas.2003724117 (abstract seen)',
  Tzika2024b:
    'Tzika AC et al. 2024, PMEL is involved in snake colour pattern transition from blotches to stripes, Nat Commun 15:7655, doi 10.1038/s41467-024-51927-0 (lab summary seen)',
  Montandon2025: 'Montandon SA et al. 2025, CLCN2, Genome Biol 26:73, doi 10.1186/s13059-025-03539-0 (abstract seen)',
  CornList: "Corn snake gene list of a breeders' guide book site (seen; common practice, no experiment)",
  cp: 'common practice, no source (written from memory)',
};

/** What a welfare note or a rule says for its source when only breeders tell it. */
export const BREEDERS = 'reported by breeders (memory)';
