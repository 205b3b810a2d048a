# Los términos del oficio, contados al dueño de un barco.
explain-title = Qué significan las palabras, en su barco
explain-on-boat = En su barco
explain-said = Se suele decir
explain-truth = Lo que vale
explain-trust = Con qué certeza
explain-slide = Muévalo
explain-rests = Se apoya en
explain-list = Términos que se pueden explicar
explain-no-job = Escriba un archivo de trabajo tras el término para verlo con los números de su barco.

explain-parts = Partes de la hélice
explain-parts-plain = Las palas salen de un núcleo taladrado a la medida del eje. Cada pala tiene un canto de ataque, que encuentra primero el agua, un canto de salida, una raíz junto al núcleo y una punta. El lado que mira a popa es la cara de presión: empuja. El que mira a proa es el dorso: aspira.
explain-parts-boat-boat = Cada una de las { $blades } puntas recorre un círculo de { $path } m por vuelta, y a toda máquina pasa a { $tip }.
explain-parts-wrong = El dorso es el lado que se ve desde popa.
explain-parts-right = El dorso mira a proa. Es el lado de succión, hace más de la mitad del trabajo, y ahí empieza a comerse el metal.
explain-parts-trust = Nombres según la ISO 3715 y el oficio.

explain-diameter = Diámetro
explain-diameter-plain = El doble de la distancia del centro del eje a una punta. Decide cuánta agua toma la hélice. Mucha agua acelerada un poco empuja con menos pérdida que poca agua acelerada mucho.
explain-diameter-boat-boat = Sus { $inches } in ({ $mm } mm) barren { $disc } m². A toda máquina pasan { $tonnes } de agua por minuto y salen { $added } más deprisa de lo que llegaron. Una hélice ideal de ese tamaño haría empuje con el { $now } % de la potencia; una un décimo mayor, con el { $larger } %.
explain-diameter-wrong = Se mide de punta a punta.
explain-diameter-right = Con tres palas ninguna punta queda enfrente de otra. Mida del centro del eje a una punta y doble, en cada pala. Deje un 15 % del diámetro entre puntas y casco (práctica común, sin fuente).
explain-diameter-trust = Cantidad de movimiento del chorro, asunto de manual; el empuje es el de este barco, con su duda.

explain-pitch = Paso
explain-pitch-plain = Lo que la cara de la pala avanzaría en una vuelta si el agua fuera una tuerca. Desenrolle la vuelta y queda un triángulo: el círculo en la base, el paso de altura. Junto al núcleo el círculo es corto y la pala va empinada; en la punta va tendida. El paso es el mismo.
explain-pitch-boat-boat = Su marca dice { $inches } in ({ $mm } mm). Son { $root }° a tres décimos del radio, { $mid }° a siete décimos y { $tip }° en la punta. El paso verdadero será { $true }; a toda máquina el barco avanza { $advance } por vuelta.
explain-pitch-wrong = Una hélice de paso 14 in avanza 14 in por vuelta.
explain-pitch-right = Avanza menos, y así debe ser: sin resbalamiento no hay empuje. Y el grabado es una afirmación; las palas gastadas o reparadas se apartan a menudo una pulgada.
explain-pitch-trust = La geometría es exacta; la dispersión de los grabados es práctica común, sin fuente.

explain-slip = Resbalamiento y rendimiento
explain-slip-plain = El resbalamiento es lo que falta entre el paso y lo avanzado en una vuelta. No es una pérdida: es el ángulo con que la pala encuentra el agua, y ese ángulo hace el empuje. El rendimiento es lo que sale de la potencia que entra. Es nulo sin resbalamiento y máximo en algún punto intermedio.
explain-slip-boat-boat = A toda máquina su resbalamiento aparente es { $apparent }; contado en el agua que arrastra el casco, { $real }. El rendimiento en aguas libres es { $efficiency }, de un { $best } % que esta hélice daría en su mejor avance.
explain-slip-wrong = Menos resbalamiento es mejor hélice.
explain-slip-right = Los barcos lentos y pesados resbalan de un tercio a la mitad con la hélice justa; los rápidos y ligeros, de un décimo a un cuarto. Muy poco suele indicar un grabado falso, una corredera falsa o una hélice sin nada que hacer.
explain-slip-trust = Rendimiento según una serie publicada; los valores usuales son práctica común, sin fuente.

explain-areas = Áreas de la pala
explain-areas-plain = Una pala tiene tres áreas. Expandida: cada sección puesta en plano. Desarrollada: la pala destorcida. Proyectada: su sombra en una pared detrás. Las relaciones se toman sobre el círculo que barren las puntas.
explain-areas-boat-boat = Sus palas tienen una relación de área expandida de { $ratio }; una pala mide unos { $blade } cm². La sombra es el { $shadow } % y soporta { $load } a toda máquina.
explain-areas-wrong = Más pala es más empuje.
explain-areas-right = El mismo empuje repartido en más área hace menos ruido y hierve menos, pero cada centímetro también roza. El área está para soportar la carga, no más.
explain-areas-trust = Área proyectada por la relación de Taylor; vale a unos pocos por ciento.

explain-blades = Número de palas
explain-blades-plain = Más palas se reparten el empuje: cada golpe es menor y llega más a menudo. También rozan más y trabajan unas en la estela de otras. Paso y diámetro tienen que acompañar.
explain-blades-boat-less = Sus { $blades } palas golpean a { $rate } a toda máquina. Con { $other } del mismo contorno, diámetro y paso el motor giraría { $difference } menos; la velocidad cambiaría { $speed }.
explain-blades-boat-more = Sus { $blades } palas golpean a { $rate } a toda máquina. Con { $other } del mismo contorno, diámetro y paso el motor giraría { $difference } más; la velocidad cambiaría { $speed }.
explain-blades-boat-even = Sus { $blades } palas golpean a { $rate } a toda máquina. Con { $other } del mismo contorno, diámetro y paso el motor cambiaría { $difference }, la velocidad { $speed }.
explain-blades-wrong = Cuatro palas son siempre más lentas, tres siempre más rápidas.
explain-blades-right = El mismo barco puede ir igual de rápido con unas u otras si diámetro y paso se eligen para ellas. Cambian la suavidad, la resistencia a vela y el sitio en el vano.
explain-blades-trust = Según una serie publicada, que es una familia de palas; las fundidas difieren.

explain-cup = Copa
explain-cup-plain = Un labio doblado en el canto de salida hacia la cara de presión. Desvía el agua algo más, así que obra como más paso, y ayuda a la pala a sujetarse donde entra aire o vapor.
explain-cup-boat-has = Sus palas llevan copa. Una mediana vale aquí de { $low } a { $high } mm de paso; sin la suya el motor ganaría { $difference }.
explain-cup-boat-none = Se dice que las suyas no tienen, o nadie miró. Una copa mediana valdría de { $low } a { $high } mm de paso y costaría al motor { $difference }.
explain-cup-wrong = La copa es agarre gratis.
explain-cup-right = Es paso con otro nombre, y el motor lo paga. Una amoladora la quita en un minuto, y con ella se van o se ganan de 100 a 300 rpm.
explain-cup-trust = Lo que vale una copa es práctica común, sin fuente; la banda lo dice.

explain-rake = Lanzamiento
explain-rake-plain = Cuánto se inclinan las palas hacia popa, vistas de lado. Aleja las puntas de un arbotante o del casco, y en barcos rápidos con hélice somera cambia por dónde levanta el empuje.
explain-rake-boat-boat = Sus palas se inclinan { $angle }° a popa: las puntas quedan { $tip } mm detrás de una pala sin lanzamiento.
explain-rake-boat-unknown = Nadie ha medido el suyo. Una regla recta sobre el núcleo y otra hasta la punta lo dirán.
explain-rake-wrong = El lanzamiento da velocidad.
explain-rake-right = Lo hace en hélices que trabajan en la superficie. Unos grados en una sumergida mueven las puntas y apenas el barco.
explain-rake-trust = Ángulo medido; su valor es práctica común, sin fuente.

explain-skew = Divergencia
explain-skew-plain = Cuánto se barre la pala hacia atrás en el giro, vista desde popa. Una pala barrida entra poco a poco en el agua lenta tras la quilla o el codaste, y el golpe se vuelve empuje.
explain-skew-boat-boat = Sus palas se barren { $angle }°: un { $share } % del camino hasta la siguiente.
explain-skew-boat-unknown = Nadie ha medido la suya. Una foto desde popa con una regla basta para trazarla.
explain-skew-wrong = La divergencia es adorno.
explain-skew-right = Es el remedio más suave para una pala que golpea al pasar un codaste grueso. Cuesta resistencia en el canto de salida cerca de la punta, y al ir atrás.
explain-skew-trust = Ángulo según la ITTC; su valor es práctica común, sin fuente.

explain-hand = Mano
explain-hand-plain = El sentido en que gira la hélice avante, vista desde popa mirando a proa: en el sentido de las agujas del reloj es derecha. En una pala derecha en pie, el canto de ataque queda a la derecha.
explain-hand-boat-right = La suya es derecha, según dijo. Mire otra vez antes de pedir nada: en el grabado y en la pala misma.
explain-hand-boat-left = La suya es izquierda, según dijo. Mire otra vez antes de pedir nada: en el grabado y en la pala misma.
explain-hand-boat-pair = Las suyas son una pareja, una de cada mano. Márquelas antes de quitarlas; cambiadas de sitio, avante se vuelve atrás.
explain-hand-boat-unknown = Nadie ha dicho cuál es la suya. Mire una pala en pie desde popa: canto de ataque a la derecha, derecha.
explain-hand-wrong = Una hélice izquierda se puede dar la vuelta para hacerla derecha.
explain-hand-right = Vuelta de extremo a extremo conserva su mano; solo se cambian la cara y el dorso. Y el giro del motor no es el del eje: casi todos los inversores lo cambian.
explain-hand-trust = Definición de la ISO 3715.

explain-paddlewheel = Efecto de rueda de paletas
explain-paddlewheel-plain = Una hélice también empuja la popa de lado, como una rueda sobre el fondo. Atrás es fuerte: el chorro sube por un costado y no hay timón en él. Avante es débil y el timón lo oculta.
explain-paddlewheel-boat-right = Derecha: atrás, la popa se va a babor. Avante, un poco a estribor. El eje se inclina { $angle }.
explain-paddlewheel-boat-left = Izquierda: atrás, la popa se va a estribor. Avante, un poco a babor. El eje se inclina { $angle }.
explain-paddlewheel-boat-twin = Con dos que giran al revés se anula cuando ambas tiran igual, y hace girar el barco con una avante y otra atrás. Los ejes se inclinan { $angle }.
explain-paddlewheel-boat-unknown = Nadie ha dicho de qué mano es la suya. Diez segundos atrás desde parado, en agua quieta, lo dirán: a babor es derecha. El eje se inclina { $angle }.
explain-paddlewheel-wrong = La pala de abajo trabaja en agua más densa.
explain-paddlewheel-right = Medio metro de hondura no cambia la densidad en nada que se pueda medir. Cuentan el chorro sobre el casco, la inclinación del eje y el agua lenta junto a la popa. Las explicaciones no concuerdan; la prueba en su barco, sí.
explain-paddlewheel-trust = El sentido es práctica común, sin fuente; con qué fuerza, nadie lo calcula para su casco: mídalo a ambos lados.

explain-twin = Una hélice o dos
explain-twin-plain = Dos se reparten el empuje, quedan libres de la quilla y gobiernan por sí solas. Girando al revés se anulan los empujes de lado. Hacia fuera por arriba, el empuje de lado y el brazo se suman cuando una va atrás; hacia dentro, se estorban.
explain-twin-boat-single = Tiene una: hace todo el empuje, { $thrust } a toda máquina con { $power }, y también todo el empuje de lado. ({ $screws } motor)
explain-twin-boat-pair = Tiene { $screws } que giran al revés: { $thrust } cada una a toda máquina, { $power } de cada motor.
explain-twin-boat-same = Tiene { $screws } de la misma mano: { $thrust } cada una a toda máquina, { $power } de cada motor. Sus empujes de lado se suman.
explain-twin-boat-unknown = Tiene { $screws }; nadie ha dicho cómo giran. { $thrust } cada una a toda máquina, { $power } de cada motor.
explain-twin-wrong = Dos motores a las mismas rpm llevan la misma carga.
explain-twin-right = Solo si hélices, reducciones y cuentavueltas son iguales. Una pulgada de paso entre ellas mueve buena parte de la carga. Primero cambie los cuentavueltas.
explain-twin-trust = Carga por el equilibrio de casco, hélice y motor; la maniobra es práctica común, sin fuente.

explain-ventilation = Ventilación y cavitación
explain-ventilation-plain = Ventilación: baja aire de la superficie. El motor se embala de golpe, en virajes y olas. Cavitación: hierve el agua misma donde el dorso aspira demasiado. Suena a grava, viene con la carga y come el metal.
explain-ventilation-boat-deep = Sobre sus puntas hay { $water } de agua: el aire es improbable. A toda máquina cavita { $back } del dorso de las palas.
explain-ventilation-boat-shallow = Sobre sus puntas hay solo { $water } de agua: puede entrar aire en olas y virajes. A toda máquina cavita { $back } del dorso de las palas.
explain-ventilation-boat-breaks = Sus puntas quedan { $water } bajo la superficie, así que pueden romperla: el aire es probable. A toda máquina cavita { $back } del dorso de las palas.
explain-ventilation-wrong = Burbujas en la estela son cavitación.
explain-ventilation-right = Las burbujas son aire. Para distinguirlas, ayude al barco a vela o a remolque: la cavitación se va con la carga. Lleve peso a popa o modere en el viraje: la ventilación se va cuando las puntas van hondas.
explain-ventilation-trust = Cavitación según Burrill 1943, un gráfico con dispersión; el agua sobre las puntas es práctica común, sin fuente.

explain-curves = Curvas de motor y hélice
explain-curves-plain = El motor tiene un límite a cada régimen. La hélice pide una potencia que crece más o menos con el cubo de sus vueltas. Donde se encuentran está toda máquina, el único punto que ve el patrón. Una hélice que llega al límite demasiado pronto tiene el motor sobrecargado en todo lo de arriba.
explain-curves-boat-below = Las suyas se encuentran a { $speed }, con { $power }. El régimen pide de { $from } a { $to } rpm limpio y cargado: demasiada hélice, { $chance }.
explain-curves-boat-above = Las suyas se encuentran a { $speed }, con { $power }. El régimen pide de { $from } a { $to } rpm limpio y cargado: poca hélice, { $chance }.
explain-curves-boat-inside = Las suyas se encuentran a { $speed }, con { $power }. El régimen pide de { $from } a { $to } rpm limpio y cargado: justa, { $chance }.
explain-curves-wrong = Se revoluciona bien en punto muerto y no echa humo, así que el motor está bien.
explain-curves-right = El punto muerto prueba el regulador y el cable. Un motor puede ir sobrecargado sin humo. Solo a toda máquina en marcha, limpio y cargado, se ve dónde se encuentran.
explain-curves-trust = Curva del fabricante si la dio, si no la usual de su clase; la banda es la del fabricante cuando consta.

explain-measuring = Medir y probar
explain-measuring-plain = Una pasada en un sentido lleva toda la corriente; la media de ambos, no. Un cuentavueltas puede errar por cientos. Cambie una sola cosa y mida otra vez igual.
explain-measuring-boat-boat = Un cuentavueltas que yerra un 5 % le engaña en { $off } rpm. Una pulgada menos de paso vale { $inch } en su barco, así que ese error solo parece { $wrong } in de paso. Su velocidad a toda máquina debería ser { $speed }.
explain-measuring-wrong = Una pulgada de paso son siempre 200 rpm.
explain-measuring-right = Es cualquier cosa entre 50 y 600, según casco, motor y hélice. Haga que se calcule para su barco, y compruébelo.
explain-measuring-trust = Por los barcos probables de este trabajo; la dispersión entre barcos viene de casos públicos.

explain-sailing = Resistencia a vela
explain-sailing-plain = Una hélice que no empuja es un freno. Trabada frena más, girando libre menos, plegada o en bandera casi nada.
explain-sailing-boat-motor = El suyo no es un velero: no hay nada que contar.
explain-sailing-boat-fixed = A 5 kn: trabada { $locked }, girando libre { $free }, plegada { $folded }. Trabada es el { $share } % de lo que pide el casco, unos { $hull } N.
explain-sailing-boat-folds = A 5 kn, plegada: { $folded }, el { $share } % de lo que pide el casco, unos { $hull } N. Una fija de este tamaño frenaría { $locked } trabada y { $free } girando libre.
explain-sailing-wrong = Trábela: una hélice que gira frena como el rotor de un helicóptero al bajar.
explain-sailing-right = Los ensayos en canal hallaron hasta el doble de resistencia con el eje trabado. Pero déjela girar solo si el fabricante del inversor lo permite; algunos se gastan sin presión de aceite. Dos palas ocultas tras una quilla son otro caso.
explain-sailing-trust = MacKenzie y Forrester 2008; coeficientes de memoria, un tercio arriba o abajo.
