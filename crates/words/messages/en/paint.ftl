# What is told of paint and of what else is bought, and the names of the things. A litre is written as L, as on the can.
paint-no-surface = No surface is named under { $markings }: it is reckoned as worn asphalt, which drinks most.
paint-name-surface = Name the surface: smooth concrete, dense asphalt, or open and worn asphalt.
paint-no-area = { $markings } has an area or an edge that is none.
paint-no-ground = The ground to wash or the length to rope off is no area or length.
paint-nobody = Nobody is named to paint: what goes by the head is not on the list.
paint-name-people = Say how many people come.
paint-no-can = No can is known that holds { $litres } L of { $what ->
    [chalk] { page-paint-chalk }
    [straw] { page-paint-straw }
    [harebell] { page-paint-harebell }
    [sedge] { page-paint-sedge }
    [hip] { page-paint-hip }
    [madder] { page-paint-madder }
    [sloe] { page-paint-sloe }
   *[other] primer
}.
paint-name-can = Name the sizes that are sold: 0.01 L to 10 000 L, for no more than 10 000 L in all.
paint-not-proven = The cans for { $what ->
    [chalk] { page-paint-chalk }
    [straw] { page-paint-straw }
    [harebell] { page-paint-harebell }
    [sedge] { page-paint-sedge }
    [hip] { page-paint-hip }
    [madder] { page-paint-madder }
    [sloe] { page-paint-sloe }
   *[other] primer
} hold enough, but cheaper ones may exist: there were too many ways to look at.
paint-price-unknown = { $count ->
    [one] One line of the list has no price: the total is the least
   *[other] { $count } lines of the list have no price: the total is the least
} that it can come to.
paint-name-price = Ask a shop and write the prices into programme.toml.
shop-masking-tape = masking tape
shop-grit = fine sand for grip
shop-roller-frame = roller frame
shop-roller-sleeve = roller sleeve
shop-tray = paint tray
shop-brush = flat brush
shop-stirring-stick = stirring stick
shop-chalk-stick = stick of chalk
shop-string = string
shop-measuring-tape = long measuring tape
shop-cone = cone
shop-barrier-tape = barrier tape
shop-sign = wet-paint sign
shop-gloves = thin gloves
shop-mask = fitted dust mask
shop-goggles = eye protection
shop-knee-pads = knee pads
shop-knife = knife with spare blades
shop-cut-glove = cut-resistant glove
shop-broom = stiff broom
shop-bucket = bucket
shop-rag = rag
shop-test-sheet = clear plastic sheet for the damp test
shop-waste-bag = waste bag
shop-drinking-water = drinking water
shop-washing-water = water to wash the ground
shop-first-aid = first-aid kit
shop-thermometer = infrared thermometer
shop-unit-piece = { $count ->
    [one] piece
   *[other] pieces
}
shop-unit-pair = { $count ->
    [one] pair
   *[other] pairs
}
shop-unit-roll = { $count ->
    [one] roll
   *[other] rolls
}
shop-unit-bag = { $count ->
    [one] bag
   *[other] bags
}
shop-unit-metre = m
shop-unit-litre = L
