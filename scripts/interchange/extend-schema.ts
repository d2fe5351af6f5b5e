// MusicXML 4.0 as far as we write it: the schema of 3.1 and what 4.0 adds to those elements. In words
// of our own after "MusicXML 4.0, W3C Community Group Final Report" (2021), the elements sound and
// swing: either `straight`, or `first`, `second` and optionally the note value (`eighth` or `16th`),
// then an optional style; it stands in a sound before its offset.

const SWING = `
	<xs:simpleType name="swing-value">
		<xs:restriction base="note-type-value">
			<xs:enumeration value="eighth"/>
			<xs:enumeration value="16th"/>
		</xs:restriction>
	</xs:simpleType>
	<xs:complexType name="swing">
		<xs:sequence>
			<xs:choice>
				<xs:element name="straight" type="empty"/>
				<xs:sequence>
					<xs:element name="first" type="xs:positiveInteger"/>
					<xs:element name="second" type="xs:positiveInteger"/>
					<xs:element name="swing-type" type="swing-value" minOccurs="0"/>
				</xs:sequence>
			</xs:choice>
			<xs:element name="swing-style" type="xs:string" minOccurs="0"/>
		</xs:sequence>
	</xs:complexType>
`;

const SOUND = /(<xs:complexType name="sound">[\s\S]*?)(<xs:element name="offset" type="offset")/u;
const END = /<\/xs:schema>\s*$/u;

/** The 3.1 schema with the additions of 4.0; throws where it is not the schema that it is made for. */
export function extendSchema(schema: string): string {
  if (!(schema.includes('Version 3.1') && SOUND.test(schema) && END.test(schema))) {
    throw new Error('this is not the schema of MusicXML 3.1');
  }
  return schema
    .replace(SOUND, '$1<xs:element name="swing" type="swing" minOccurs="0"/>\n\t\t\t$2')
    .replace(END, `${SWING}</xs:schema>\n`);
}
