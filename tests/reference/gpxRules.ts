/**
 * The rules of GPX 1.1 for what we write, as an XML Schema: order of elements, what must be there and
 * what a value may be, after the GPX 1.1 schema document (topografix, 2004; order of elements read in a
 * copy, ranges of degrees recalled). It holds those elements alone, so that what keeps to it keeps to
 * the whole schema.
 */
export const GPX_RULES = `<?xml version="1.0" encoding="UTF-8"?>
<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns="http://www.topografix.com/GPX/1/1"
  targetNamespace="http://www.topografix.com/GPX/1/1" elementFormDefault="qualified">
  <xs:element name="gpx">
    <xs:complexType>
      <xs:sequence>
        <xs:element name="metadata" minOccurs="0">
          <xs:complexType>
            <xs:sequence>
              <xs:element name="name" type="xs:string" minOccurs="0"/>
              <xs:element name="desc" type="xs:string" minOccurs="0"/>
              <xs:element name="time" type="xs:dateTime" minOccurs="0"/>
            </xs:sequence>
          </xs:complexType>
        </xs:element>
        <xs:element name="wpt" type="place" minOccurs="0" maxOccurs="unbounded"/>
        <xs:element name="trk" minOccurs="0" maxOccurs="unbounded">
          <xs:complexType>
            <xs:sequence>
              <xs:element name="name" type="xs:string" minOccurs="0"/>
              <xs:element name="desc" type="xs:string" minOccurs="0"/>
              <xs:element name="trkseg" minOccurs="0" maxOccurs="unbounded">
                <xs:complexType>
                  <xs:sequence>
                    <xs:element name="trkpt" type="place" minOccurs="0" maxOccurs="unbounded"/>
                  </xs:sequence>
                </xs:complexType>
              </xs:element>
            </xs:sequence>
          </xs:complexType>
        </xs:element>
      </xs:sequence>
      <xs:attribute name="version" type="xs:string" use="required" fixed="1.1"/>
      <xs:attribute name="creator" type="xs:string" use="required"/>
    </xs:complexType>
  </xs:element>
  <xs:complexType name="place">
    <xs:sequence>
      <xs:element name="ele" type="xs:decimal" minOccurs="0"/>
      <xs:element name="name" type="xs:string" minOccurs="0"/>
      <xs:element name="desc" type="xs:string" minOccurs="0"/>
      <xs:element name="type" type="xs:string" minOccurs="0"/>
    </xs:sequence>
    <xs:attribute name="lat" use="required">
      <xs:simpleType>
        <xs:restriction base="xs:decimal">
          <xs:minInclusive value="-90.0"/>
          <xs:maxInclusive value="90.0"/>
        </xs:restriction>
      </xs:simpleType>
    </xs:attribute>
    <xs:attribute name="lon" use="required">
      <xs:simpleType>
        <xs:restriction base="xs:decimal">
          <xs:minInclusive value="-180.0"/>
          <xs:maxExclusive value="180.0"/>
        </xs:restriction>
      </xs:simpleType>
    </xs:attribute>
  </xs:complexType>
</xs:schema>
`;
