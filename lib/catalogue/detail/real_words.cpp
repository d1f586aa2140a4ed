#include "catalogue/detail/real_words.hpp"

#include <algorithm>
#include <string_view>
#include <vector>

namespace samebase::catalogue::detail {

namespace {

// Common words of the kitchen, from memory.
constexpr std::string_view words =
    "absinthe acai achiote agave ajwain amaranth amaretto anchoiade andouille angelica annatto arepas "
    "asafoetida asiago bagel bagels baharat barramundi bass batter batters beechnuts biscotti bison "
    "bitter bitters blackberries blancmange bologna bonito borage boudin boysenberries brains brandy "
    "bratwurst breadfruit bream bresaola brioche burdock butterscotch callaloo canapes candlenuts "
    "caponata caramel cardoon cardoons carob carp cassava cassis challah champagne chapati chervil "
    "chestnut chestnuts chicory ciabatta citron citrons cloudberries cockle cockles cod cognac cointreau "
    "comte cones conger cookies cranberry crayfish croissant crumpet curacao damson damsons dextrose "
    "dukkah durian edam edamame eel elderberries elderflower emmental escarole faggots farro feijoa figs "
    "filberts flapjack focaccia fondant fontina fructose fudge gelato gingerbread ginseng glucose goji "
    "goose gooseberries gooseberry granita grappa grouper grouse gruyere guanciale guar guava guavas "
    "gyoza haddock haggis hake halibut halva halvah hare havarti hemp hempseed herring herrings hickory "
    "hyssop injera jackfruit jarlsberg jello jelly jicama juniper kamut kernels kielbasa kipper kippers "
    "kirsch komatsuna kombu kumquat kumquats labneh ladyfingers langoustine lardo lardon lardons lavender "
    "lecithin licorice limoncello linseed liquorice lobster lobsters loganberries longan loquat lovage "
    "lychee lychees madeira mahlab manchego marrowbone marsala marzipan matzo matzoh melons merguez "
    "meringue meringues mizuna monkfish mortadella mousse muffin muffins mulberries mullet munster muscat "
    "muscle natto nduja nigella nopales nori nougat ouzo oyster oysters papaya paratha partridge "
    "passionfruit pectin pepperberry pepperoni perch pernod persimmon persimmons pheasant pigeon pignoli "
    "pike plaice plantain plantains pollock polony pomegranate pomelo pomelos ponzu poppadom port praline "
    "pretzel pretzels prosecco provolone psyllium puntarelle purslane quail quails quark rabbit radicchio "
    "ram rambutan roquefort rosehip roti sago salsify salted sambuca samphire savoiardi savory scone "
    "scones sesames sherbet sherry shortbread skate skyr snapper snapping sorbet sorghum sorrel speck "
    "spelt spirulina stevia stilton sturgeon sumac sweetbreads swordfish taleggio tamarillo tamarind "
    "tapioca taro tatsoi teff tequila teriyaki tilapia toffee tongue tongues tortilla tostada tripe "
    "triticale trotters truffle truffles turbot umeboshi venison verbena vermouth vodka wafers wakame "
    "wasabi wattleseed whelks whiskey whisky wieners winkle wonton wontons xanthan xylitol yam yams yucca "
    "yuzu zaatar";

std::vector<Letters> read_real_words() {
    std::vector<Letters> read;
    for (std::size_t at = 0; at < words.size();) {
        const auto end = std::min(words.find(' ', at), words.size());
        read.push_back(singular(folded(words.substr(at, end - at))));
        at = end + 1;
    }
    std::sort(read.begin(), read.end());
    return read;
}

}  // namespace

bool is_real_word(const Letters& word) {
    static const std::vector<Letters> real = read_real_words();
    return std::binary_search(real.begin(), real.end(), word);
}

}  // namespace samebase::catalogue::detail
