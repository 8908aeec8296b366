/** Names for grown animals: plants, weather, tools. */
export const NAMES: readonly string[] =
  `Agate Alder Almond Anvil Arrow Ash Aspen Auburn Barley Basil Bay Beacon Bellows Birch Bobbin Bracken Bramble Brass
Briar Brindle Bronze Bryony Buckle Burdock Button Cairn Campion Candle Caper Caraway Cedar Chalk Cherry Chervil Chestnut
Cinder Clover Cloud Clove Cobalt Comet Copper Coral Cork Cricket Crocus Damson Dapple Dill Dock Dogwood Drizzle Drover
Dusk Ebony Elder Elm Ember Fathom Fennel Fern Ferrule Fig Filbert Finch Flax Flint Foxglove Furrow Gable Gale Garnet Ginger
Gorse Granite Grove Gusset Hail Harrow Hawthorn Hazel Heather Hemlock Hickory Holly Hops Hornbeam Hyssop Indigo Iris Ivy
Jasper Jet Juniper Kelp Kestrel Kindle Lantern Larch Laurel Lichen Lilac Lime Linden Loam Lovage Lupin Madder Mallow
Maple Marble Marigold Marjoram Marl Medlar Merle Millet Mint Mist Moonwort Moss Mulberry Mustard Myrtle Needle Nettle
Nimbus Nutmeg Oakum Oat Ochre Olive Onyx Opal Orchid Osier Oxlip Pebble Pepper Pewter Pine Plum Poplar Poppy Primrose
Privet Quartz Quill Quince Rafter Rain Raisin Reed Rivet Rosemary Rowan Rue Rush Russet Rye Saffron Sage Sandy Sedge
Sequin Shale Shingle Silt Slate Sleet Sloe Smoke Sorrel Spruce Squall Sumac Tallow Tansy Teasel Thatch Thicket Thimble
Thistle Thorn Thyme Timber Tinder Topaz Treacle Umber Vale Vervain Vetch Violet Walnut Wicker Willow Winter Woad Wren Yarrow Yew`
    .split(/\s+/)
    .filter((name) => name !== '');
