# Lo que se dice de la pintura y del resto de la compra, y los nombres de las cosas. El litro se escribe L, como en la lata.
paint-no-surface = No se indica la superficie bajo { $markings }: se calcula como asfalto gastado, el que más absorbe.
paint-name-surface = Indique la superficie: hormigón liso, asfalto denso, o asfalto abierto y gastado.
paint-no-area = { $markings } tiene una superficie o un borde imposible.
paint-no-ground = El suelo que se lava o la longitud que se acordona no es una medida posible.
paint-nobody = No se indica quién pinta: lo que va por persona no está en la lista.
paint-name-people = Indique cuántas personas vienen.
paint-no-can = No se conoce ninguna lata para { $litres } L de { $what ->
    [chalk] { page-paint-chalk }
    [straw] { page-paint-straw }
    [harebell] { page-paint-harebell }
    [sedge] { page-paint-sedge }
    [hip] { page-paint-hip }
    [madder] { page-paint-madder }
    [sloe] { page-paint-sloe }
   *[other] imprimación
}.
paint-name-can = Indique los tamaños que se venden: de 0,01 L a 10 000 L, para no más de 10 000 L en total.
paint-not-proven = Las latas de { $what ->
    [chalk] { page-paint-chalk }
    [straw] { page-paint-straw }
    [harebell] { page-paint-harebell }
    [sedge] { page-paint-sedge }
    [hip] { page-paint-hip }
    [madder] { page-paint-madder }
    [sloe] { page-paint-sloe }
   *[other] imprimación
} bastan, pero puede haberlas más baratas: había demasiadas combinaciones.
paint-price-unknown = { $count ->
    [one] Una línea de la lista no tiene precio: el total es lo mínimo
   *[other] { $count } líneas de la lista no tienen precio: el total es lo mínimo
} que puede costar.
paint-name-price = Pregunte en una tienda y escriba los precios en programme.toml.
shop-masking-tape = cinta de enmascarar
shop-grit = arena fina para el agarre
shop-roller-frame = mango de rodillo
shop-roller-sleeve = funda de rodillo
shop-tray = cubeta de pintura
shop-brush = brocha plana
shop-stirring-stick = palo para remover
shop-chalk-stick = barra de tiza
shop-string = cuerda
shop-measuring-tape = cinta métrica larga
shop-cone = cono
shop-barrier-tape = cinta de balizar
shop-sign = cartel de pintura fresca
shop-gloves = guantes finos
shop-mask = mascarilla ajustada contra el polvo
shop-goggles = protección para los ojos
shop-knee-pads = rodilleras
shop-knife = cúter con hojas de repuesto
shop-cut-glove = guante anticorte
shop-broom = escoba dura
shop-bucket = cubo
shop-rag = trapo
shop-test-sheet = lámina de plástico transparente para la prueba de humedad
shop-waste-bag = bolsa de basura
shop-drinking-water = agua para beber
shop-washing-water = agua para lavar el suelo
shop-first-aid = botiquín
shop-thermometer = termómetro de infrarrojos
shop-unit-piece = { $count ->
    [one] unidad
   *[other] unidades
}
shop-unit-pair = { $count ->
    [one] par
   *[other] pares
}
shop-unit-roll = { $count ->
    [one] rollo
   *[other] rollos
}
shop-unit-bag = { $count ->
    [one] bolsa
   *[other] bolsas
}
shop-unit-metre = m
shop-unit-litre = L
